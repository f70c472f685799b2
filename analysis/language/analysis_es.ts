<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>Heldwheel</name>
    <message>
        <source>Test</source>
        <translation>Ensayo</translation>
    </message>
    <message>
        <source>SIMULATED</source>
        <translation>SIMULADO</translation>
    </message>
    <message>
        <source>Take the zero</source>
        <translation>Tomar el cero</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>Keep turning</source>
        <translation>Siga girando</translation>
    </message>
    <message>
        <source>one stud</source>
        <translation>un espárrago</translation>
    </message>
    <message>
        <source>hub centre</source>
        <translation>centro del cubo</translation>
    </message>
    <message>
        <source>force at radius</source>
        <translation>fuerza en un radio</translation>
    </message>
    <message>
        <source>dead weight</source>
        <translation>peso muerto</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Cero</translation>
    </message>
    <message>
        <source>Pulls</source>
        <translation>Tirones</translation>
    </message>
    <message>
        <source>rotating mean</source>
        <translation>par de giro medio</translation>
    </message>
    <message>
        <source>rotating maximum</source>
        <translation>par de giro máximo</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>otro lado</translation>
    </message>
    <message>
        <source>held side</source>
        <translation>lado sujeto</translation>
    </message>
    <message>
        <source>both ways</source>
        <translation>ambos sentidos</translation>
    </message>
    <message>
        <source>in gear</source>
        <translation>con marcha puesta</translation>
    </message>
    <message>
        <source>Brakes</source>
        <translation>Frenos</translation>
    </message>
    <message>
        <source>This program measures; it does not declare a car safe or legal. The maker's manual, local rules and qualified or licensed people decide.</source>
        <translation>Este programa mide; no declara que un coche sea seguro o legal. Deciden el manual del fabricante, las normas locales y personas cualificadas o autorizadas.</translation>
    </message>
    <message>
        <source>Engine off, ignition key out and away from the car; automatic start-stop and remote start off. Never drive the axle with one wheel raised: the other wheel drives too.</source>
        <translation>Motor parado, llave de contacto fuera y lejos del coche; arranque automático y arranque a distancia desactivados. Nunca mueva el eje con el motor con una rueda levantada: la otra rueda también tira.</translation>
    </message>
    <message>
        <source>Hybrid or electric: trained people only, not READY, high-voltage system made safe. A permanent-magnet motor generates voltage when its wheel is turned, and there may be no mechanical neutral: follow the maker.</source>
        <translation>Híbrido o eléctrico: solo personas formadas, no en READY, sistema de alta tensión asegurado. Un motor de imanes permanentes genera tensión cuando se gira su rueda, y puede no haber punto muerto mecánico: siga al fabricante.</translation>
    </message>
    <message>
        <source>Chock every wheel that stays on the floor, front and rear: with the parking brake off and the gearbox in neutral nothing else holds the car. With all wheels raised chocks hold nothing: four stands or a lift.</source>
        <translation>Calce por delante y por detrás cada rueda que quede en el suelo: sin freno de estacionamiento y en punto muerto nada más sujeta el coche. Con todas las ruedas levantadas los calzos no sujetan nada: cuatro caballetes o un elevador.</translation>
    </message>
    <message>
        <source>Stands on a hard level floor at approved points; a jack is no support. Air suspension off.</source>
        <translation>Caballetes en suelo duro y nivelado, en puntos autorizados; un gato no es un apoyo. Suspensión neumática desactivada.</translation>
    </message>
    <message>
        <source>The pull can roll the car or tip it off its stands: shake it on the stands first, pull downward where you can, nobody in or under the car.</source>
        <translation>El tirón puede hacer rodar el coche o volcarlo de los caballetes: sacúdalo antes sobre ellos, tire hacia abajo si puede, nadie dentro ni debajo del coche.</translation>
    </message>
    <message>
        <source>Propshaft off: park no longer holds the car.</source>
        <translation>Árbol de transmisión quitado: la posición P ya no sujeta el coche.</translation>
    </message>
    <message>
        <source>Hot axle and oil can burn you: let them cool.</source>
        <translation>El eje y el aceite calientes pueden quemarle: deje que se enfríen.</translation>
    </message>
    <message>
        <source>The unit is clamped so that it can neither tip nor turn, and nothing heavy can fall on hands or feet.</source>
        <translation>La unidad está sujeta de modo que no puede volcar ni girar, y nada pesado puede caer sobre manos o pies.</translation>
    </message>
    <message>
        <source>Check the type: gear, viscous, locking and open units are not judged by this torque.</source>
        <translation>Compruebe el tipo: las unidades de engranajes, viscosas, de bloqueo y abiertas no se juzgan por este par.</translation>
    </message>
    <message>
        <source>Brakes fully free on both wheels of the axle: look, then turn by hand. An electric parking brake in its service mode, fingers clear of it: it can move by itself.</source>
        <translation>Frenos totalmente libres en ambas ruedas del eje: mire y gire a mano. Freno de estacionamiento eléctrico en modo de servicio, dedos lejos: puede moverse solo.</translation>
    </message>
    <message>
        <source>Gearbox and transfer case in neutral; the other axle of a four-wheel drive able to turn, or its shaft off.</source>
        <translation>Caja y transfer en punto muerto; el otro eje de una tracción total libre para girar, o su árbol quitado.</translation>
    </message>
    <message>
        <source>A gear is engaged: never touch the starter, and let nobody else reach it.</source>
        <translation>Hay una marcha puesta: nunca toque el arranque ni deje que otro llegue a él.</translation>
    </message>
    <message>
        <source>The other wheel is really held, by floor or strap: not by fingers in the spokes or by a clamped brake hose. Two people agree on the word that means stop.</source>
        <translation>La otra rueda está realmente sujeta, por el suelo o una cincha: no con los dedos en los radios ni pinzando un latiguillo. Dos personas acuerdan la palabra para parar.</translation>
    </message>
    <message>
        <source>The other shaft is really held, by vice or bar: not by hand.</source>
        <translation>El otro semieje está realmente sujeto, con tornillo de banco o barra: no a mano.</translation>
    </message>
    <message>
        <source>The case is really held, by its flange or ring gear bolts: not by hand.</source>
        <translation>La caja está realmente sujeta, por su brida o los tornillos de la corona: no a mano.</translation>
    </message>
    <message>
        <source>Both wheels (or shafts) clear of the floor and free to turn; hands, hoses and cables clear of the second one: it turns too.</source>
        <translation>Ambas ruedas (o semiejes) separadas del suelo y libres; manos, tubos y cables lejos de la segunda: también gira.</translation>
    </message>
    <message>
        <source>Wheel (or bare disc) bolted up tight, adapter centred, nothing loose; do not pull in the loosening direction on a hub nut.</source>
        <translation>Rueda (o disco desnudo) bien apretada, adaptador centrado, nada suelto; en una tuerca de cubo no tire en el sentido de aflojar.</translation>
    </message>
    <message>
        <source>Stay below the lowest rating of transducer, lever, adapter, socket and stud; no extension pipe, no power or impact tool.</source>
        <translation>Quédese por debajo del menor límite de transductor, palanca, adaptador, vaso y espárrago; sin tubo de prolongación, sin herramienta de potencia o de impacto.</translation>
    </message>
    <message>
        <source>Eye protection on; loose clothing, hair and hands away from spokes and lever.</source>
        <translation>Protección ocular puesta; ropa suelta, pelo y manos lejos de los radios y la palanca.</translation>
    </message>
    <message>
        <source>The lever's swing clear; stand outside its plane: wound shafts spring back. Ease the load off; never release the lever under load.</source>
        <translation>El recorrido de la palanca libre; sitúese fuera de su plano: los ejes torcidos devuelven el golpe. Retire la carga despacio; nunca suelte la palanca con carga.</translation>
    </message>
    <message>
        <source>Zero with the lever hanging or off, after warm-up, unloaded; repeat at the end.</source>
        <translation>Cero con la palanca colgando o quitada, en caliente, sin carga; repita al final.</translation>
    </message>
    <message>
        <source>Smooth ramp, two to three seconds to the first slip; 2-10 turns a minute; a jerk can double the reading.</source>
        <translation>Rampa suave, dos o tres segundos hasta el primer deslizamiento; 2-10 vueltas por minuto; un tirón brusco puede doblar la lectura.</translation>
    </message>
    <message>
        <source>At least two turns for a steady value, five repeats for a peak, both directions if safe.</source>
        <translation>Al menos dos vueltas para un valor estable, cinco repeticiones para un pico, ambos sentidos si es seguro.</translation>
    </message>
    <message>
        <source>Keep turning only if the wheel moves; stop if torque climbs without motion. Stop at binding, knocking or steps: that is a fault, not a torque.</source>
        <translation>Siga girando solo si la rueda se mueve; pare si el par sube sin movimiento. Pare si se agarrota, golpea o salta: eso es una avería, no un par.</translation>
    </message>
    <message>
        <source>Lever, adapter and strap off first.</source>
        <translation>Primero fuera palanca, adaptador y cincha.</translation>
    </message>
    <message>
        <source>Wheel nuts to the maker's torque.</source>
        <translation>Tuercas de rueda al par del fabricante.</translation>
    </message>
    <message>
        <source>Brake pedal pumped until it is firm; parking brake back in service.</source>
        <translation>Bombee el pedal de freno hasta que esté firme; freno de estacionamiento de nuevo en servicio.</translation>
    </message>
    <message>
        <source>Propshaft refitted, by its marks and to the maker's torque.</source>
        <translation>Árbol de transmisión montado, según sus marcas y al par del fabricante.</translation>
    </message>
    <message>
        <source>Chocks away last, when the car stands on its wheels and is held.</source>
        <translation>Los calzos al final, cuando el coche esté sobre sus ruedas y sujeto.</translation>
    </message>
    <message>
        <source>The first peak may exceed the rotating torque: normal for plate types.</source>
        <translation>El primer pico puede superar el par de giro: normal en los de discos.</translation>
    </message>
    <message>
        <source>A lever on a stud that points outward reads low by about 10-20 %; one that points inward reads high: enter stud circle, lever length and angle.</source>
        <translation>Una palanca en un espárrago que apunta hacia fuera lee un 10-20 % de menos; una que apunta hacia dentro lee de más: indique círculo, longitud y ángulo.</translation>
    </message>
    <message>
        <source>Part of the number is gearbox, seals, bearings and pads. Small limits may be mostly drag.</source>
        <translation>Parte del número es caja, retenes, rodamientos y pastillas. Los límites pequeños pueden ser sobre todo arrastre.</translation>
    </message>
    <message>
        <source>The test shows the mean of both packs; left and right readings differ because of wheel drag, not a weak side.</source>
        <translation>El ensayo muestra la media de ambos paquetes; izquierda y derecha difieren por el arrastre de las ruedas, no por un lado débil.</translation>
    </message>
    <message>
        <source>On a bench with the case held it reads about double the car.</source>
        <translation>En banco con la caja sujeta se lee cerca del doble que en el coche.</translation>
    </message>
    <message>
        <source>lbf·ft, lbf·in, N·m and kgf·m are different torques; use the limit in the unit and for the condition it is printed for.</source>
        <translation>lbf·ft, lbf·in, N·m y kgf·m son pares distintos; use el límite en la unidad y para la condición en que está impreso.</translation>
    </message>
    <message>
        <source>Printed limits differ by axle and contain misprints; yours comes from your manual or rule book.</source>
        <translation>Los límites impresos varían según el eje y contienen erratas; el suyo viene de su manual o reglamento.</translation>
    </message>
    <message>
        <source>Near the limit the honest answer may be that it is too close to call.</source>
        <translation>Cerca del límite la respuesta honesta puede ser: demasiado justo para decidir.</translation>
    </message>
    <message>
        <source>Compare before and after only at the same temperature, speed, rest, side, fixture and oil.</source>
        <translation>Compare antes y después solo con igual temperatura, velocidad, reposo, lado, utillaje y aceite.</translation>
    </message>
    <message>
        <source>Passing this test is no proof of traction under power: ramps and gear separation act only with drive torque.</source>
        <translation>Superar este ensayo no prueba tracción con potencia: rampas y engranajes solo actúan con par motor.</translation>
    </message>
    <message>
        <source>A low reading with good plates: check plate order, springs, too much friction modifier, hot oil.</source>
        <translation>Lectura baja con discos buenos: compruebe orden de discos, muelles, exceso de modificador, aceite caliente.</translation>
    </message>
    <message>
        <source>Chatter: oil and friction modifier first; more modifier also lowers holding torque.</source>
        <translation>Vibración: primero aceite y modificador; más modificador también baja el par de retención.</translation>
    </message>
    <message>
        <source>New packs lose preload as they run in: test again.</source>
        <translation>Los paquetes nuevos pierden precarga al rodarse: repita el ensayo.</translation>
    </message>
    <message>
        <source>Too high fails a maximum rule (racing), too low fails a minimum rule (service): know which applies.</source>
        <translation>Demasiado incumple una regla de máximo (carreras), poco una de mínimo (servicio): sepa cuál vale.</translation>
    </message>
    <message>
        <source>Demonstration or simulated data must never be filed as a test.</source>
        <translation>Los datos de demostración o simulados nunca deben archivarse como ensayo.</translation>
    </message>
    <message>
        <source>Fixture</source>
        <translation>Utillaje</translation>
    </message>
    <message>
        <source>Limit</source>
        <translation>Límite</translation>
    </message>
    <message>
        <source>Transducer</source>
        <translation>Transductor</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Precauciones</translation>
    </message>
    <message>
        <source>Mistakes and their sizes</source>
        <translation>Errores y cuánto cuestan</translation>
    </message>
    <message>
        <source>neutral</source>
        <translation>punto muerto</translation>
    </message>
    <message>
        <source>%1 at the axle, %2</source>
        <translation>%1 en el eje, %2</translation>
    </message>
    <message>
        <source>median of %1 readings</source>
        <translation>mediana de %1 lecturas</translation>
    </message>
    <message>
        <source>How to make a held-wheel torque test</source>
        <translation>Cómo medir el par con una rueda sujeta</translation>
    </message>
    <message>
        <source>Hold one wheel of the axle, turn the other with a lever. The pack of a clutch-type limited-slip differential then slips: B is the torque that breaks it away, R the torque that keeps it rotating. %1 The maker's manual comes first.</source>
        <translation>Sujete una rueda del eje y gire la otra con una palanca. El paquete de un autoblocante de discos desliza entonces: B es el par que lo arranca, R el par que lo mantiene girando. %1 El manual del fabricante va primero.</translation>
    </message>
    <message>
        <source>Hold one wheel</source>
        <translation>Sujetar una rueda</translation>
    </message>
    <message>
        <source>On the floor or strapped, never by hand. Raise the other. Neutral, brakes free; turn it by hand.</source>
        <translation>En el suelo o con cincha, nunca a mano. Levante la otra. Punto muerto, frenos libres; gírela a mano.</translation>
    </message>
    <message>
        <source>Fit the lever</source>
        <translation>Montar la palanca</translation>
    </message>
    <message>
        <source>On a stud, pointing outward in line with the wheel's centre. Measure to the middle of your hand.</source>
        <translation>En un espárrago, hacia fuera y en línea con el centro de la rueda. Mida hasta el centro de la mano.</translation>
    </message>
    <message>
        <source>Transducer warm, lever hanging free or off, hands off. Take it once more after the last pull.</source>
        <translation>Transductor caliente, palanca colgando libre o quitada, manos fuera. Tómelo otra vez tras el último tirón.</translation>
    </message>
    <message>
        <source>Two to three seconds until it slips. No jerk. Stop if the torque climbs and nothing moves.</source>
        <translation>Dos o tres segundos hasta que deslice. Sin golpes. Pare si el par sube y nada se mueve.</translation>
    </message>
    <message>
        <source>Slowly, 2 to 10 turns a minute, two turns. Ease the load off, keep hold. Rest, and again: five pulls.</source>
        <translation>Despacio, de 2 a 10 vueltas por minuto, dos vueltas. Retire la carga sin soltar. Reposo, y otra vez: cinco tirones.</translation>
    </message>
    <message>
        <source>mistake</source>
        <translation>error</translation>
    </message>
    <message>
        <source>what it does</source>
        <translation>qué causa</translation>
    </message>
    <message>
        <source>from</source>
        <translation>origen</translation>
    </message>
    <message>
        <source>Always</source>
        <translation>Siempre</translation>
    </message>
    <message>
        <source>geometry of the lever, 1 + r/L</source>
        <translation>geometría, 1 + r/L</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>práctica común, sin fuente</translation>
    </message>
    <message>
        <source>inertia × acceleration</source>
        <translation>inercia × aceleración</translation>
    </message>
    <message>
        <source>weight × distance</source>
        <translation>peso × distancia</translation>
    </message>
    <message>
        <source>ramp × delay</source>
        <translation>rampa × retardo</translation>
    </message>
    <message>
        <source>packs add up, no mean</source>
        <translation>suma de paquetes, no media</translation>
    </message>
    <message>
        <source>NIST SP 811, appendix B.8</source>
        <translation>NIST SP 811, apéndice B.8</translation>
    </message>
    <message>
        <source>steel shafts, 38 to 28 mm</source>
        <translation>semiejes de acero, 38 a 28 mm</translation>
    </message>
    <message>
        <source>Lever on a stud, read as it is</source>
        <translation>Palanca en un espárrago, lectura tal cual</translation>
    </message>
    <message>
        <source>11 % low (5 × 114.3 mm, lever 450 mm; 16 % at 300 mm)</source>
        <translation>11 % de menos (5 × 114,3 mm, 450 mm; 16 % con 300 mm)</translation>
    </message>
    <message>
        <source>Lever on a stud pointing inward</source>
        <translation>Palanca en un espárrago, hacia dentro</translation>
    </message>
    <message>
        <source>15 % high (5 × 114.3 mm, lever 450 mm)</source>
        <translation>15 % de más (5 × 114,3 mm, palanca de 450 mm)</translation>
    </message>
    <message>
        <source>Hand 20 mm from where L was measured</source>
        <translation>Mano a 20 mm de donde se midió L</translation>
    </message>
    <message>
        <source>0.5 % at 450 mm</source>
        <translation>0,5 % con 450 mm</translation>
    </message>
    <message>
        <source>Jerked, or still speeding up</source>
        <translation>A golpes, o aún acelerando</translation>
    </message>
    <message>
        <source>20 to 34 N·m high (1.0 to 1.7 kg·m² at 20 rad/s²)</source>
        <translation>20 a 34 N·m de más (1,0 a 1,7 kg·m² con 20 rad/s²)</translation>
    </message>
    <message>
        <source>Zero taken with the lever held level</source>
        <translation>Cero con la palanca en horizontal</translation>
    </message>
    <message>
        <source>up to 6.1 N·m off (2.5 kg at 0.25 m)</source>
        <translation>hasta 6,1 N·m de error (2,5 kg a 0,25 m)</translation>
    </message>
    <message>
        <source>Slow display, ten readings a second</source>
        <translation>Pantalla lenta, diez lecturas por segundo</translation>
    </message>
    <message>
        <source>15 N·m low (50 N·m a second, 0.3 s late)</source>
        <translation>15 N·m de menos (50 N·m por segundo, 0,3 s de retraso)</translation>
    </message>
    <message>
        <source>A brake drags</source>
        <translation>Un freno roza</translation>
    </message>
    <message>
        <source>4 to 10 N·m high, or it will not turn at all</source>
        <translation>de 4 a 10 N·m de más, o no gira</translation>
    </message>
    <message>
        <source>A gear is engaged, or the case is held</source>
        <translation>Una marcha puesta, o la caja sujeta</translation>
    </message>
    <message>
        <source>about twice the torque</source>
        <translation>cerca del doble de par</translation>
    </message>
    <message>
        <source>lbf·ft, lbf·in, N·m, kgf·m mixed up</source>
        <translation>lbf·ft, lbf·in, N·m, kgf·m confundidos</translation>
    </message>
    <message>
        <source>Large transducer for a small torque</source>
        <translation>Transductor grande para un par pequeño</translation>
    </message>
    <message>
        <source>27 N·m is 8 % of a range of 339 N·m: wide interval</source>
        <translation>27 N·m son el 8 % de 339 N·m: intervalo ancho</translation>
    </message>
    <message>
        <source>One pull only</source>
        <translation>Un solo tirón</translation>
    </message>
    <message>
        <source>a single peak scatters by several to tens of per cent</source>
        <translation>un pico solo se dispersa hasta decenas por ciento</translation>
    </message>
    <message>
        <source>Drag taken for the pack</source>
        <translation>Arrastre tomado por el paquete</translation>
    </message>
    <message>
        <source>16 to 21 N·m without any pack friction</source>
        <translation>16 a 21 N·m sin fricción del paquete</translation>
    </message>
    <message>
        <source>Wind-up of the shafts taken for slip</source>
        <translation>Torsión de semiejes tomada por deslizar</translation>
    </message>
    <message>
        <source>0.6 to 1.8° at 100 N·m before anything slips</source>
        <translation>0,6 a 1,8° con 100 N·m, antes de deslizar</translation>
    </message>
    <message>
        <source>held: floor, strap</source>
        <translation>suelo, cincha</translation>
    </message>
    <message>
        <source>raised</source>
        <translation>levantada</translation>
    </message>
    <message>
        <source>stand</source>
        <translation>caballete</translation>
    </message>
    <message>
        <source>not by hand</source>
        <translation>no a mano</translation>
    </message>
    <message>
        <source>lever</source>
        <translation>palanca</translation>
    </message>
    <message>
        <source>pull square</source>
        <translation>a escuadra</translation>
    </message>
    <message>
        <source>hangs free</source>
        <translation>cuelga libre</translation>
    </message>
    <message>
        <source>hands off; again at the end</source>
        <translation>sin manos; otra vez al final</translation>
    </message>
    <message>
        <source>2 to 3 s</source>
        <translation>2 a 3 s</translation>
    </message>
    <message>
        <source>time</source>
        <translation>tiempo</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>cerrado</translation>
    </message>
    <message>
        <source>foreign</source>
        <translation>de otro programa</translation>
    </message>
    <message>
        <source>the true zero was not taken again after the pulls: what it may have moved by is not in the interval</source>
        <translation>el cero verdadero no se tomó otra vez tras los tirones: lo que pueda haberse movido no está en el intervalo</translation>
    </message>
    <message>
        <source>median of %1 pulls, %2 s/√n</source>
        <translation>mediana de %1 tirones, %2 s/√n</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>dentro</translation>
    </message>
    <message>
        <source>axle tag</source>
        <translation>placa del eje</translation>
    </message>
    <message>
        <source>settled</source>
        <translation>asentado</translation>
    </message>
    <message>
        <source>clipped</source>
        <translation>recortado</translation>
    </message>
    <message>
        <source>lost samples</source>
        <translation>muestras perdidas</translation>
    </message>
    <message>
        <source>cut at start</source>
        <translation>cortado al inicio</translation>
    </message>
    <message>
        <source>cut at end</source>
        <translation>cortado al final</translation>
    </message>
    <message>
        <source>ramp too fast</source>
        <translation>carga demasiado rápida</translation>
    </message>
    <message>
        <source>zero moved</source>
        <translation>cero movido</translation>
    </message>
    <message>
        <source>not resolved</source>
        <translation>sin resolver</translation>
    </message>
    <message>
        <source>the recording begins in the middle of this pull: start it before touching the lever</source>
        <translation>el registro empieza en medio de este tirón: inícielo antes de tocar la palanca</translation>
    </message>
    <message>
        <source>the recording ends under load: ease the load off first, and stop the recording a second later</source>
        <translation>el registro acaba con carga: retire antes la carga y párelo un segundo después</translation>
    </message>
    <message>
        <source>gripped again on the way: this is the pull stated before, as a whole; it counts once</source>
        <translation>se reagarró por el camino: es el tirón de antes, entero; cuenta una vez</translation>
    </message>
    <message>
        <source>gripped again a moment after the pull before, and one of the two shows no steady turning: not counted; rest two seconds before you pull again</source>
        <translation>se reagarró un momento después del tirón anterior y uno de los dos no muestra giro estable: no cuenta; descanse dos segundos antes de tirar otra vez</translation>
    </message>
    <message>
        <source>eased off before anything showed that the pack slipped: pull again, slowly, until the wheel turns and keeps turning</source>
        <translation>se aflojó antes de ver que el paquete deslizara: tire otra vez, despacio, hasta que la rueda gire y siga girando</translation>
    </message>
    <message>
        <source>the torque was held but the wheel did not turn: pull on until it turns and keeps turning</source>
        <translation>se mantuvo el par pero la rueda no giró: siga tirando hasta que gire y siga girando</translation>
    </message>
    <message>
        <source>came at once or lay still, as a lever does that is put on, and no other pull shows what is usual: pull by hand until the pack breaks away, or record the wheel's angle</source>
        <translation>vino de golpe o quedó quieto, como una palanca que se monta, y ningún otro tirón muestra lo usual: tire a mano hasta que el paquete arranque, o registre el ángulo de la rueda</translation>
    </message>
    <message>
        <source>under 2 % of the transducer's capacity, where no class is calibrated: use a smaller transducer</source>
        <translation>menos del 2 % de la capacidad, donde ninguna clase está calibrada: use un transductor menor</translation>
    </message>
    <message>
        <source>no peak shows where the slip began: without the wheel's angle, a torque held below the slip would look the same</source>
        <translation>ningún pico muestra dónde empezó a deslizar: sin el ángulo de la rueda, un par mantenido por debajo se vería igual</translation>
    </message>
    <message>
        <source>nothing lay still before the ramp, so the torque counts from its foot and the interval is wide: rest a second before you pull</source>
        <translation>nada estaba quieto antes de la rampa, así que el par cuenta desde su pie y el intervalo es ancho: descanse un segundo antes de tirar</translation>
    </message>
    <message>
        <source>the reading jumped and then stood as still as at rest: the transducer has set its zero by itself; take the zero again with the lever hanging</source>
        <translation>la lectura saltó y quedó quieta como en reposo: el transductor se puso a cero solo; tome el cero otra vez con la palanca colgando</translation>
    </message>
    <message>
        <source>%1 readings at the transducer's limit: use a larger one</source>
        <translation>%1 lecturas en el límite del transductor: use uno mayor</translation>
    </message>
    <message>
        <source>%1 readings beyond the transducer's range: use a larger one</source>
        <translation>%1 lecturas fuera del rango del transductor: use uno mayor</translation>
    </message>
    <message>
        <source>samples are missing at the breakaway: bring the receiver nearer, pull again</source>
        <translation>faltan muestras en el arranque: acerque el receptor y tire otra vez</translation>
    </message>
    <message>
        <source>jerked to its peak in %1 s: take two seconds for the first slip</source>
        <translation>golpe hasta el pico en %1 s: tómese dos segundos hasta el primer deslizamiento</translation>
    </message>
    <message>
        <source>rose %1 N·m between two readings, so the breakaway's interval is wide: pull %2 times slower, or measure faster</source>
        <translation>subió %1 N·m entre dos lecturas, así que el intervalo del arranque es ancho: tire %2 veces más despacio o mida más rápido</translation>
    </message>
    <message>
        <source>the trace lay still at two levels before the ramp, %1 and %2 N·m: the torque counts from the first, the interval reaches the other; rest a second before you pull</source>
        <translation>antes de la rampa la traza quedó quieta en dos niveles, %1 y %2 N·m: el par cuenta desde el primero, el intervalo llega al otro; descanse un segundo antes de tirar</translation>
    </message>
    <message>
        <source>the reading stood still for %1 s under load: check the link</source>
        <translation>la lectura quedó quieta %1 s con carga: revise el enlace</translation>
    </message>
    <message>
        <source>the torque went on changing by %1 % while turning: nothing steady to state</source>
        <translation>el par siguió cambiando un %1 % al girar: nada estable que indicar</translation>
    </message>
    <message>
        <source>a fluid coupling or a dragging brake does that</source>
        <translation>así hace un acoplamiento viscoso o un freno que roza</translation>
    </message>
    <message>
        <source>the torque kept to %1 for about as long: no one level to state</source>
        <translation>el par se mantuvo en %1 más o menos igual de tiempo: no hay un solo nivel que indicar</translation>
    </message>
    <message>
        <source>turn at one speed, which a fluid coupling follows</source>
        <translation>gire a una sola velocidad, que un acoplamiento viscoso sigue</translation>
    </message>
    <message>
        <source>only %1 s of steady turning: keep turning evenly, two seconds or more</source>
        <translation>solo %1 s de giro estable: siga girando parejo, dos segundos o más</translation>
    </message>
    <message>
        <source>yanks or hesitations most of the way: turn more evenly</source>
        <translation>tirones bruscos o pausas casi todo el tiempo: gire más parejo</translation>
    </message>
    <message>
        <source>the torque changed by %1 % while turning: the interval reaches both ends</source>
        <translation>el par cambió un %1 % al girar: el intervalo llega a ambos extremos</translation>
    </message>
    <message>
        <source>taken back: small beside what came later, so it was no pull but a lever or a hand</source>
        <translation>retirado: pequeño junto a lo que vino después, así que no fue un tirón sino una palanca o una mano</translation>
    </message>
    <message>
        <source>%1 gaps in the stream, %2 s in all, the first at %3 s</source>
        <translation>%1 huecos en los datos, %2 s en total, el primero en %3 s</translation>
    </message>
    <message>
        <source>%1 single values stood out like no torque can and were excluded from the pulls</source>
        <translation>%1 valores sueltos destacaron como ningún par puede y se excluyeron de los tirones</translation>
    </message>
    <message>
        <source>there are no samples</source>
        <translation>no hay muestras</translation>
    </message>
    <message>
        <source>no sample can be used</source>
        <translation>ninguna muestra sirve</translation>
    </message>
    <message>
        <source>no pull with a torque to state was found</source>
        <translation>no se halló ningún tirón con un par que indicar</translation>
    </message>
    <message>
        <source>the torque reached the transducer's limit</source>
        <translation>el par llegó al límite del transductor</translation>
    </message>
    <message>
        <source>%1 of %2 torque values are not numbers and were excluded</source>
        <translation>%1 de %2 valores de par no son números y se excluyeron</translation>
    </message>
    <message>
        <source>%1 samples have no usable time and were excluded</source>
        <translation>%1 muestras no tienen un tiempo utilizable y se excluyeron</translation>
    </message>
    <message>
        <source>%1 samples share a time stamp with the one before; they were spread over the time since the stamp before: record the device's sample counter if it has one</source>
        <translation>%1 muestras comparten la marca de tiempo con la anterior; se repartieron en el tiempo desde la marca anterior: registre el contador del aparato si lo tiene</translation>
    </message>
    <message>
        <source>%1 samples came late or twice (their time had passed) and were excluded</source>
        <translation>%1 muestras llegaron tarde o dos veces (su tiempo había pasado) y se excluyeron</translation>
    </message>
    <message>
        <source>the clock was set back %1 times (first at %2 s); times after that are counted on from the sample before</source>
        <translation>el reloj se atrasó %1 veces (la primera en %2 s); los tiempos siguientes se cuentan desde la muestra anterior</translation>
    </message>
    <message>
        <source>the reading's step of %1 N·m is a large part of the interval: a finer one would narrow it</source>
        <translation>el paso de lectura de %1 N·m es gran parte del intervalo: uno más fino lo estrecharía</translation>
    </message>
    <message>
        <source>the true zero moved by %1 N·m from before to after the pulls: let the transducer warm up, and repeat</source>
        <translation>el cero verdadero se movió %1 N·m de antes a después de los tirones: deje calentar el transductor y repita</translation>
    </message>
    <message>
        <source>the transducer gives no sign: every pull counts as clockwise, its true direction is not known</source>
        <translation>el transductor no da signo: cada tirón cuenta como horario, su sentido real no se conoce</translation>
    </message>
    <message>
        <source>no valid pull gives the %1 that the limit names</source>
        <translation>ningún tirón válido da lo que nombra el límite: %1</translation>
    </message>
    <message>
        <source>about %1 more pulls like these would settle it, if the value stays where it is</source>
        <translation>unos %1 tirones más como estos lo decidirían, si el valor se queda donde está</translation>
    </message>
    <message>
        <source>more pulls cannot settle it: what they share (transducer, lever, zero) is ± %1 N·m, the limit is %2 N·m away; state the lever's lengths or use a better transducer</source>
        <translation>más tirones no pueden decidirlo: lo que comparten (transductor, palanca, cero) es ± %1 N·m y el límite está a %2 N·m; indique las medidas de la palanca o use un transductor mejor</translation>
    </message>
    <message>
        <source>more pulls like these would hardly settle it: they scatter too much for so small a distance</source>
        <translation>más tirones como estos apenas lo decidirían: se dispersan demasiado para una distancia tan pequeña</translation>
    </message>
    <message>
        <source>too few pulls to know their scatter: make three or more, five if you can</source>
        <translation>muy pocos tirones para conocer su dispersión: haga tres o más, cinco si puede</translation>
    </message>
    <message>
        <source>this is a recording for '%1', not of held pulls</source>
        <translation>este es un registro para «%1», no de tirones con parte sujeta</translation>
    </message>
    <message>
        <source>no separate breakaway peak: the torque at which slip began is compared</source>
        <translation>sin pico de arranque separado: se compara el par con que empezó a deslizar</translation>
    </message>
    <message>
        <source>a ratio limit compares two recordings: in gear and in neutral</source>
        <translation>un límite de relación compara dos registros: con marcha y en punto muerto</translation>
    </message>
    <message>
        <source>rotating</source>
        <translation>en giro</translation>
    </message>
    <message>
        <source>%1 is %2 % of the transducer's capacity (below 20 %): a smaller transducer would give a narrower interval</source>
        <translation>%1 es el %2 % de la capacidad del transductor (menos del 20 %): uno menor daría un intervalo más estrecho</translation>
    </message>
    <message>
        <source>%1 is %2 % of the transducer's capacity (above 80 %): a jerk may overload it; use a larger one</source>
        <translation>%1 es el %2 % de la capacidad del transductor (más del 80 %): un golpe puede sobrecargarlo; use uno mayor</translation>
    </message>
    <message>
        <source>the limit</source>
        <translation>el límite</translation>
    </message>
    <message>
        <source>the highest reading</source>
        <translation>la lectura más alta</translation>
    </message>
    <message>
        <source>CERTIFICATE EXPIRED on %1, %2 before this test: have the transducer calibrated</source>
        <translation>CERTIFICADO CADUCADO el %1, %2 antes de este ensayo: haga calibrar el transductor</translation>
    </message>
    <message>
        <source>%1 days</source>
        <translation>%1 días</translation>
    </message>
    <message>
        <source>one day</source>
        <translation>un día</translation>
    </message>
    <message>
        <source>%1 of %2 pulls stood out (%3 N·m)</source>
        <translation>%1 de %2 tirones destacaron (%3 N·m)</translation>
    </message>
    <message>
        <source>%1: scatter not known from so few, %2</source>
        <translation>%1: con tan pocos no se conoce la dispersión, %2</translation>
    </message>
    <message>
        <source>one pull</source>
        <translation>un tirón</translation>
    </message>
    <message>
        <source>a repeatability of %1 % is %2</source>
        <translation>repetibilidad del %1 %, valor %2</translation>
    </message>
    <message>
        <source>assumed</source>
        <translation>supuesto</translation>
    </message>
    <message>
        <source>torque</source>
        <translation>par</translation>
    </message>
    <message>
        <source>the value %1 by %2 % from first to last pull (p = %3): warming up or running in; go on until it settles, or compare only at the same temperature</source>
        <translation>el valor %1 un %2 % del primer al último tirón (p = %3): calentamiento o rodaje; siga hasta que se asiente, o compare solo a igual temperatura</translation>
    </message>
    <message>
        <source>rises</source>
        <translation>sube</translation>
    </message>
    <message>
        <source>falls</source>
        <translation>baja</translation>
    </message>
    <message>
        <source>a '%1' fixture takes a %2, but the trace holds a torque</source>
        <translation>un utillaje «%1» toma «%2», pero la traza contiene un par</translation>
    </message>
    <message>
        <source>force</source>
        <translation>fuerza</translation>
    </message>
    <message>
        <source>angle not known</source>
        <translation>ángulo desconocido</translation>
    </message>
    <message>
        <source>it has no pack: what you would measure is the drag of bearings, seals and gears</source>
        <translation>no tiene paquete: se mediría el arrastre de rodamientos, retenes y engranajes</translation>
    </message>
    <message>
        <source>it has no pack: its locking comes from gear thrust under load, and its maker may state a ratio of in-gear to neutral torque instead</source>
        <translation>no tiene paquete: bloquea por el empuje de los engranajes bajo carga, y su fabricante quizá dé una relación entre el par con marcha y en punto muerto</translation>
    </message>
    <message>
        <source>its torque depends on speed and heat, without a breakaway: compare only at a fixed speed and temperature, as its maker says</source>
        <translation>su par depende de la velocidad y del calor, sin arranque: compare solo a velocidad y temperatura fijas, como dice su fabricante</translation>
    </message>
    <message>
        <source>it locks by teeth: use its maker's function check, both directions and both sides</source>
        <translation>bloquea por dientes: use la comprobación de función de su fabricante, ambos sentidos y ambos lados</translation>
    </message>
    <message>
        <source>its light plates idle until the governor trips, so a low torque is healthy</source>
        <translation>sus discos ligeros van libres hasta que salta el regulador, así que un par bajo es sano</translation>
    </message>
    <message>
        <source>nothing can slip</source>
        <translation>nada puede deslizar</translation>
    </message>
    <message>
        <source>Not judged yet: it could also be %1, and this test says nothing about that type; %2.</source>
        <translation>Aún sin evaluar: también podría ser %1, y este ensayo no dice nada de ese tipo; %2.</translation>
    </message>
    <message>
        <source>look at the tag, the oil's label or the parts list</source>
        <translation>mire la placa, la etiqueta del aceite o la lista de piezas</translation>
    </message>
    <message>
        <source>A quarter of a turn of slack is lash or worn tabs, not preload: look inside before measuring.</source>
        <translation>Un cuarto de vuelta de holgura es juego o lengüetas gastadas, no precarga: mire dentro antes de medir.</translation>
    </message>
    <message>
        <source>factor</source>
        <translation>factor</translation>
    </message>
    <message>
        <source>The other wheel stands still when the packs are weaker than its own drag plus half the driveline's: a stiff gearbox makes a weak unit look open.</source>
        <translation>La otra rueda se queda quieta cuando los paquetes son más débiles que su propio arrastre más medio de la transmisión: una caja dura hace que una unidad débil parezca abierta.</translation>
    </message>
    <message>
        <source>judged all the same: %1</source>
        <translation>juzgado de todos modos: %1</translation>
    </message>
    <message>
        <source>still</source>
        <translation>quieto</translation>
    </message>
    <message>
        <source>the lever is not known, so the torque at the axle is not either</source>
        <translation>no se conoce la palanca, así que tampoco el par en el eje</translation>
    </message>
    <message>
        <source>the transducer was on the held side: it does not show the torque at the turned wheel that a limit is for</source>
        <translation>el transductor estaba en el lado sujeto: no muestra el par en la rueda girada para el que vale un límite</translation>
    </message>
    <message>
        <source>the interval is wider than the limit's band: no value could be shown to lie within</source>
        <translation>el intervalo es más ancho que el margen del límite: de ningún valor se podría mostrar que está dentro</translation>
    </message>
    <message>
        <source>the pulls scatter by %1 % (gate %2 %): repeat with the same rest before each pull, a smooth ramp and the lever in the same place</source>
        <translation>los tirones se dispersan un %1 % (umbral %2 %): repita con el mismo reposo antes de cada tirón, rampa suave y la palanca en el mismo sitio</translation>
    </message>
    <message>
        <source>excluded by the rule stated beforehand</source>
        <translation>excluido por la regla dicha de antemano</translation>
    </message>
    <message>
        <source>kept: exclude a pull only with a reason</source>
        <translation>se conserva: excluya un tirón solo con un motivo</translation>
    </message>
    <message>
        <source>an outlier is the pull furthest from the mean, if that is further than in 95 of 100 clean jobs (Grubbs, five pulls or more)</source>
        <translation>un valor atípico es el tirón más lejano de la media, si lo está más que en 95 de cada 100 trabajos limpios (Grubbs, cinco tirones o más)</translation>
    </message>
    <message>
        <source>each direction has its own value; where both were pulled the less favourable one is judged</source>
        <translation>cada sentido tiene su propio valor; si se tiró en ambos se juzga el menos favorable</translation>
    </message>
    <message>
        <source>no pull to take a value from</source>
        <translation>ningún tirón del que tomar un valor</translation>
    </message>
    <message>
        <source>× %1: each pull is like the one before</source>
        <translation>× %1: cada tirón se parece al anterior</translation>
    </message>
    <message>
        <source>s no less than one reading leaves open</source>
        <translation>s no menor de lo que una lectura deja abierto</translation>
    </message>
    <message>
        <source>what each reading leaves open</source>
        <translation>lo que cada lectura deja abierto</translation>
    </message>
    <message>
        <source>pull-to-pull scatter</source>
        <translation>dispersión de tirón a tirón</translation>
    </message>
    <message>
        <source>repeatability</source>
        <translation>repetibilidad</translation>
    </message>
    <message>
        <source>the lever is not known: torque at the axle is not stated; give --lever, or [lever] in a sidecar</source>
        <translation>no se conoce la palanca: falta el par en el eje; dé --lever, o [lever] en el archivo adjunto</translation>
    </message>
    <message>
        <source>the fixture is not known: torque at the axle is not stated; give it in Edit details, or with --lever</source>
        <translation>no se conoce el utillaje: falta el par en el eje; délo en «Editar detalles» o con --lever</translation>
    </message>
    <message>
        <source>no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's weight, not stated, is assumed in the interval</source>
        <translation>sin cero verdadero (palanca colgando o quitada): en el eje el par cuenta desde el nivel sin manos, y el peso de la palanca, no declarado, se supone en el intervalo</translation>
    </message>
    <message>
        <source>no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's weight is in the interval</source>
        <translation>sin cero verdadero (palanca colgando o quitada): en el eje el par cuenta desde el nivel sin manos, y el peso de la palanca está en el intervalo</translation>
    </message>
    <message>
        <source>accuracy not stated: assumed within ± %1 % of reading</source>
        <translation>exactitud no declarada: se supone dentro de ± %1 % de la lectura</translation>
    </message>
    <message>
        <source>lever angle not stated: taken as 0°, in line with the wheel centre and the stud</source>
        <translation>ángulo de la palanca no declarado: se toma 0°, en línea con el centro de la rueda y el espárrago</translation>
    </message>
    <message>
        <source>the lever is not in line with the stud: the result depends on a square pull; line up centre, stud, lever</source>
        <translation>la palanca no está en línea con el espárrago: el resultado depende de tirar a escuadra; alinee centro, espárrago y palanca</translation>
    </message>
    <message>
        <source>transducer on the held side: it reads the pack mean less half the driveline drag</source>
        <translation>transductor en el lado sujeto: lee la media de los paquetes menos medio arrastre de la transmisión</translation>
    </message>
    <message>
        <source>lever's weight at hand-off</source>
        <translation>peso de la palanca sin manos</translation>
    </message>
    <message>
        <source>part of a turn</source>
        <translation>parte de una vuelta</translation>
    </message>
    <message>
        <source>full-scale accuracy</source>
        <translation>exactitud del fondo de escala</translation>
    </message>
    <message>
        <source>stated for full scale only</source>
        <translation>declarada solo para el fondo de escala</translation>
    </message>
    <message>
        <source>hand-off level (no true zero)</source>
        <translation>nivel sin manos (sin cero verdadero)</translation>
    </message>
    <message>
        <source>no true zero: lever's weight at an unknown angle</source>
        <translation>sin cero verdadero: peso de la palanca a un ángulo desconocido</translation>
    </message>
    <message>
        <source>no true zero, lever's weight not stated: assumed within ± %1 N·m</source>
        <translation>sin cero verdadero, peso de la palanca no declarado: se supone dentro de ± %1 N·m</translation>
    </message>
    <message>
        <source>over whole turns it averages to zero</source>
        <translation>en vueltas completas se anula</translation>
    </message>
    <message>
        <source>waves of about ± %1 % assumed: turn two whole turns and record the angle</source>
        <translation>se suponen ondas de ± %1 %: gire dos vueltas enteras y registre el ángulo</translation>
    </message>
    <message>
        <source>the wheel's speed changed while it turned</source>
        <translation>la velocidad de la rueda cambió al girar</translation>
    </message>
    <message>
        <source>noise, sampling, boundaries</source>
        <translation>ruido, muestreo, bordes</translation>
    </message>
    <message>
        <source>gain %1 divided out; its uncertainty as stated</source>
        <translation>ganancia %1 descontada; su incertidumbre como se declaró</translation>
    </message>
    <message>
        <source>true zero (%1), before and after</source>
        <translation>cero verdadero (%1), antes y después</translation>
    </message>
    <message>
        <source>mark spacing</source>
        <translation>separación de las marcas</translation>
    </message>
    <message>
        <source>class, as a rectangle</source>
        <translation>clase, como rectángulo</translation>
    </message>
    <message>
        <source>class not stated: assumed</source>
        <translation>clase no declarada: supuesta</translation>
    </message>
    <message>
        <source>zero as set on the dial</source>
        <translation>cero como se ajustó en la esfera</translation>
    </message>
    <message>
        <source>drive offset</source>
        <translation>desvío del cuadrado</translation>
    </message>
    <message>
        <source>force radius</source>
        <translation>radio de la fuerza</translation>
    </message>
    <message>
        <source>drum radius</source>
        <translation>radio del tambor</translation>
    </message>
    <message>
        <source>slope of the arm</source>
        <translation>inclinación del brazo</translation>
    </message>
    <message>
        <source>grip mark</source>
        <translation>marca de agarre</translation>
    </message>
    <message>
        <source>non-linearity</source>
        <translation>no linealidad</translation>
    </message>
    <message>
        <source>the dial's class is not stated: assumed within ± %1 % of reading</source>
        <translation>clase de la esfera no declarada: se supone dentro de ± %1 % de la lectura</translation>
    </message>
    <message>
        <source>the reading is %1 % of full scale, below the certified part of the range (from %2 %): its error there is taken as that of the lower end</source>
        <translation>la lectura es el %1 % del fondo de escala, por debajo de la parte certificada (desde el %2 %): su error se toma como el del extremo inferior</translation>
    </message>
    <message>
        <source>the marks are %1 % of the reading apart (at most 10 % is usual)</source>
        <translation>las marcas están separadas un %1 % de la lectura (lo usual es 10 % como máximo)</translation>
    </message>
    <message>
        <source>the spacing of the marks is not stated: assumed a tenth of the reading, the widest usual</source>
        <translation>separación de las marcas no declarada: se supone un décimo de la lectura, lo más ancho usual</translation>
    </message>
    <message>
        <source>the reading is beyond the dial's full scale</source>
        <translation>la lectura pasa del fondo de escala</translation>
    </message>
    <message>
        <source>no both-free baseline: the pack mean cannot be separated from drag</source>
        <translation>sin registro base con ambas ruedas libres: la media de los paquetes no se separa del arrastre</translation>
    </message>
    <message>
        <source>drag correction withheld: %1</source>
        <translation>corrección de arrastre omitida: %1</translation>
    </message>
    <message>
        <source>drag correction of the %1 withheld: the baseline alone explains all of it</source>
        <translation>corrección de arrastre omitida (%1): el registro base solo ya lo explica todo</translation>
    </message>
    <message>
        <source>drag correction of the %1 withheld: the baseline has no %2</source>
        <translation>corrección de arrastre omitida (%1): el registro base no tiene %2</translation>
    </message>
    <message>
        <source>no speeds were recorded: turn the baseline at half the wheel speed of the held test, the carrier then turns as fast in both</source>
        <translation>no se registró velocidad: gire el registro base a la mitad de la velocidad del ensayo con rueda sujeta, así la caja gira igual en ambos</translation>
    </message>
    <message>
        <source>the baseline turned at %1 % of the held test's wheel speed; at half of it the carrier turns as fast in both, and the viscous part of the drag is the same</source>
        <translation>el registro base se giró al %1 % de la velocidad del ensayo; a la mitad la caja gira igual en ambos y la parte viscosa del arrastre es la misma</translation>
    </message>
    <message>
        <source>the baseline was turned one way only: it stands for %1 too</source>
        <translation>el registro base se giró en un solo sentido: vale también para %1</translation>
    </message>
    <message>
        <source>its baseline %1 does not lie beside the recording</source>
        <translation>su registro base %1 no está junto al registro</translation>
    </message>
    <message>
        <source>its baseline %1 has changed since: its SHA-256 differs</source>
        <translation>su registro base %1 ha cambiado desde entonces: su SHA-256 difiere</translation>
    </message>
    <message>
        <source>its baseline cannot be read: %1</source>
        <translation>su registro base no se puede leer: %1</translation>
    </message>
    <message>
        <source>the decision rule (%1) was set after the recording had begun; it should be agreed beforehand</source>
        <translation>la regla de decisión (%1) se fijó tras empezar el registro; debería acordarse antes</translation>
    </message>
    <message>
        <source>build sheet not used: %1</source>
        <translation>hoja de montaje no usada: %1</translation>
    </message>
    <message>
        <source>the lever of a force was changed after the recording had begun: its pulls keep the first</source>
        <translation>la palanca de una fuerza se cambió tras empezar el registro: sus tirones conservan la primera</translation>
    </message>
    <message>
        <source>rotating from %1 s to %2 s</source>
        <translation>giro de %1 s a %2 s</translation>
    </message>
    <message>
        <source>a correction concerns a pull at %1 s, but none starts there</source>
        <translation>una corrección se refiere a un tirón en %1 s, pero ahí no empieza ninguno</translation>
    </message>
    <message>
        <source>the correction of the pull at %1 s is not applied: %2</source>
        <translation>la corrección del tirón en %1 s no se aplica: %2</translation>
    </message>
    <message>
        <source>there is nothing between %1 s and %2 s</source>
        <translation>no hay nada entre %1 s y %2 s</translation>
    </message>
    <message>
        <source>%1 s lies outside the recording</source>
        <translation>%1 s queda fuera del registro</translation>
    </message>
    <message>
        <source>the torque at %1 s is against the pull's direction</source>
        <translation>el par en %1 s va contra el sentido del tirón</translation>
    </message>
    <message>
        <source>there is no rotating torque between %1 s and %2 s</source>
        <translation>no hay par de giro entre %1 s y %2 s</translation>
    </message>
    <message>
        <source>the pull has no stretch of rotation: give both ends</source>
        <translation>el tirón no tiene tramo de giro: dé ambos extremos</translation>
    </message>
    <message>
        <source>bench</source>
        <translation>banco</translation>
    </message>
    <message>
        <source>car</source>
        <translation>coche</translation>
    </message>
    <message>
        <source>case held</source>
        <translation>caja sujeta</translation>
    </message>
    <message>
        <source>nothing held</source>
        <translation>nada sujeto</translation>
    </message>
    <message>
        <source>case</source>
        <translation>caja</translation>
    </message>
    <message>
        <source>unsteady</source>
        <translation>inestable</translation>
    </message>
    <message>
        <source>too short</source>
        <translation>demasiado corto</translation>
    </message>
    <message>
        <source>two turns, slowly</source>
        <translation>dos vueltas, despacio</translation>
    </message>
    <message>
        <source>nothing moves: stop</source>
        <translation>no se mueve: pare</translation>
    </message>
    <message>
        <source>Turn each wheel with its brake fully released, drums and cables looked at. What holds?</source>
        <translation>Gire cada rueda con su freno del todo suelto, mirando tambores y cables. ¿Qué sujeta?</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral: turn one by hand. What does the other one do?</source>
        <translation>Ambas ruedas motrices levantadas, punto muerto: gire una a mano. ¿Qué hace la otra?</translation>
    </message>
    <message>
        <source>Both wheels raised, gear engaged (propshaft held), engine off: turn one wheel. What happens?</source>
        <translation>Ambas ruedas levantadas, marcha puesta (árbol sujeto), motor parado: gire una rueda. ¿Qué pasa?</translation>
    </message>
    <message>
        <source>How far does the wheel move before it bites?</source>
        <translation>¿Cuánto se mueve la rueda antes de agarrar?</translation>
    </message>
    <message>
        <source>both brakes are free</source>
        <translation>ambos frenos están libres</translation>
    </message>
    <message>
        <source>a brake or a cable drags</source>
        <translation>un freno o un cable roza</translation>
    </message>
    <message>
        <source>not checked</source>
        <translation>sin comprobar</translation>
    </message>
    <message>
        <source>it turns the same way</source>
        <translation>gira en el mismo sentido</translation>
    </message>
    <message>
        <source>it turns the other way</source>
        <translation>gira al revés</translation>
    </message>
    <message>
        <source>it stands still</source>
        <translation>se queda quieta</translation>
    </message>
    <message>
        <source>neither can be turned apart: they always move together</source>
        <translation>no se pueden girar por separado: siempre van juntas</translation>
    </message>
    <message>
        <source>hardly any resistance, drag only</source>
        <translation>apenas resistencia, solo arrastre</translation>
    </message>
    <message>
        <source>a firm, even drag once it has broken away</source>
        <translation>tras el arranque, una resistencia firme y uniforme</translation>
    </message>
    <message>
        <source>a light, even drag</source>
        <translation>una resistencia ligera y uniforme</translation>
    </message>
    <message>
        <source>it gets stiffer with speed, or with time; no breakaway</source>
        <translation>se endurece con la velocidad o con el tiempo; sin arranque</translation>
    </message>
    <message>
        <source>free one way, locks when moved back</source>
        <translation>libre en un sentido, se bloquea al volver</translation>
    </message>
    <message>
        <source>it cannot be turned</source>
        <translation>no se puede girar</translation>
    </message>
    <message>
        <source>the other turns the opposite way, easily</source>
        <translation>la otra gira al revés, con facilidad</translation>
    </message>
    <message>
        <source>about twice as hard as with one wheel held</source>
        <translation>cerca del doble de duro que con una rueda sujeta</translation>
    </message>
    <message>
        <source>very much harder than in neutral</source>
        <translation>mucho más duro que en punto muerto</translation>
    </message>
    <message>
        <source>it cannot be turned by hand</source>
        <translation>no se puede girar a mano</translation>
    </message>
    <message>
        <source>not tried</source>
        <translation>sin probar</translation>
    </message>
    <message>
        <source>a few degrees</source>
        <translation>unos grados</translation>
    </message>
    <message>
        <source>a quarter of a turn or more</source>
        <translation>un cuarto de vuelta o más</translation>
    </message>
    <message>
        <source>Not judged: free both brakes first; a dragging brake or a seized shoe imitates a tight pack.</source>
        <translation>Sin evaluar: libere antes ambos frenos; un freno que roza o una zapata agarrotada imita un paquete duro.</translation>
    </message>
    <message>
        <source>Nothing fits all of this: try again with the brakes free, both wheels raised and the gearbox in neutral.</source>
        <translation>Nada encaja con todo esto: pruebe otra vez con los frenos libres, ambas ruedas levantadas y la caja en punto muerto.</translation>
    </message>
    <message>
        <source>this test says nothing about this type of axle, %1</source>
        <translation>este ensayo no dice nada de este tipo de eje, %1</translation>
    </message>
    <message>
        <source>the axle's type is not settled: it could be %1, and this test says nothing about that type</source>
        <translation>el tipo de eje no está claro: podría ser %1, y este ensayo no dice nada de ese tipo</translation>
    </message>
    <message>
        <source>a brake was not free: it imitates a tight pack</source>
        <translation>un freno no estaba libre: imita un paquete duro</translation>
    </message>
    <message>
        <source>the axle's type is %1, but %2</source>
        <translation>el tipo de eje es %1, pero %2</translation>
    </message>
    <message>
        <source>Engine off and key away, car on stands, wheels on the floor chocked, brakes released.</source>
        <translation>Motor parado y llave fuera, coche sobre caballetes, ruedas en el suelo calzadas, frenos sueltos.</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>sin indicar</translation>
    </message>
    <message>
        <source>before lifting</source>
        <translation>antes de levantar</translation>
    </message>
    <message>
        <source>before pulling</source>
        <translation>antes de tirar</translation>
    </message>
    <message>
        <source>while pulling</source>
        <translation>al tirar</translation>
    </message>
    <message>
        <source>after the test</source>
        <translation>después del ensayo</translation>
    </message>
    <message>
        <source>reading it</source>
        <translation>al leerlo</translation>
    </message>
    <message>
        <source>In gear</source>
        <translation>Con marcha</translation>
    </message>
    <message>
        <source>clockwise</source>
        <translation>horario</translation>
    </message>
    <message>
        <source>anticlockwise</source>
        <translation>antihorario</translation>
    </message>
    <message>
        <source>1 pull</source>
        <translation>1 tirón</translation>
    </message>
    <message>
        <source>median of %1 pulls</source>
        <translation>mediana de %1 tirones</translation>
    </message>
    <message>
        <source>within</source>
        <translation>dentro</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>fuera</translation>
    </message>
    <message>
        <source>too close to call</source>
        <translation>demasiado cerca para decidir</translation>
    </message>
    <message>
        <source>not valid</source>
        <translation>no válido</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Informe</translation>
    </message>
    <message>
        <source>%1: %2 at the axle</source>
        <translation>%1: %2 en el eje</translation>
    </message>
    <message>
        <source>Torque against time</source>
        <translation>Par frente al tiempo</translation>
    </message>
    <message>
        <source>nothing was received for %1 s within this pull: what the torque did then is not known</source>
        <translation>durante %1 s no llegó nada en este tirón: no se sabe qué hizo el par</translation>
    </message>
    <message>
        <source>no value</source>
        <translation>sin valor</translation>
    </message>
    <message>
        <source>simulated</source>
        <translation>simulado</translation>
    </message>
    <message>
        <source>recovered</source>
        <translation>recuperado</translation>
    </message>
    <message>
        <source>to %1</source>
        <translation>hasta %1</translation>
    </message>
    <message>
        <source>Torque</source>
        <translation>Par</translation>
    </message>
    <message>
        <source>Load smoothly</source>
        <translation>Cargar con suavidad</translation>
    </message>
    <message>
        <source>three-way</source>
        <translation>tres resultados</translation>
    </message>
    <message>
        <source>breakaway</source>
        <translation>par de arranque</translation>
    </message>
    <message>
        <source>in gear ÷ neutral</source>
        <translation>con marcha ÷ en punto muerto</translation>
    </message>
    <message>
        <source>the load rose ever more slowly and was released: without the wheel's angle it cannot be distinguished from a load below the slip; pull straight on through the knee, and keep turning</source>
        <translation>la carga subió cada vez más despacio y se retiró: sin el ángulo de la rueda no se distingue de una carga por debajo del deslizamiento; tire sin pausa a través del codo y siga girando</translation>
    </message>
    <message>
        <source>no half second of steady turning: keep turning evenly, two seconds or more</source>
        <translation>no hay medio segundo de giro uniforme: siga girando igual, dos segundos o más</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>clutch plate</source>
        <translation>de discos</translation>
    </message>
    <message>
        <source>cone</source>
        <translation>de conos</translation>
    </message>
    <message>
        <source>ramp plate</source>
        <translation>de discos con rampas</translation>
    </message>
    <message>
        <source>helical or worm gear</source>
        <translation>de engranajes helicoidales o sinfín</translation>
    </message>
    <message>
        <source>viscous or fluid coupling</source>
        <translation>acoplamiento viscoso o fluido</translation>
    </message>
    <message>
        <source>automatic locker</source>
        <translation>de bloqueo automático</translation>
    </message>
    <message>
        <source>governor-locking with light plates</source>
        <translation>de bloqueo centrífugo con discos ligeros</translation>
    </message>
    <message>
        <source>welded or spool</source>
        <translation>soldado o rígido</translation>
    </message>
    <message>
        <source>Slack</source>
        <translation>Holgura</translation>
    </message>
    <message>
        <source>One wheel held</source>
        <translation>Una rueda sujeta</translation>
    </message>
    <message>
        <source>Both wheels up</source>
        <translation>Ambas ruedas en alto</translation>
    </message>
    <message>
        <source>One wheel held, neutral: turn the other slowly through a full turn. What does it feel like?</source>
        <translation>Una rueda sujeta, punto muerto: gire la otra despacio una vuelta entera. ¿Cómo se siente?</translation>
    </message>
    <message>
        <source>A unit with packs (%1): the held-wheel torque measures their mean friction.</source>
        <translation>Una unidad con paquetes (%1): el par con rueda sujeta mide su fricción media.</translation>
    </message>
    <message>
        <source>Ramps act only with drive torque: in neutral only the preload of a ramp unit is seen.</source>
        <translation>Las rampas actúan solo con par motor: en punto muerto solo se ve la precarga.</translation>
    </message>
    <message>
        <source>Worn cones bottom out and then behave like an open unit.</source>
        <translation>Los conos gastados hacen tope y se comportan como una unidad abierta.</translation>
    </message>
    <message>
        <source>a ratio in gear ÷ neutral is for both wheels free; in this test one part was held</source>
        <translation>una relación con marcha ÷ en punto muerto es con ambas ruedas libres; en este ensayo una parte estaba sujeta</translation>
    </message>
    <message>
        <source>at least %1</source>
        <translation>al menos %1</translation>
    </message>
    <message>
        <source>at most %1</source>
        <translation>como máximo %1</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>repeticiones</translation>
    </message>
    <message>
        <source>calibration</source>
        <translation>calibración</translation>
    </message>
    <message>
        <source>stated ± %1 % of reading (95 %)</source>
        <translation>declarado ± %1 % de la lectura (95 %)</translation>
    </message>
    <message>
        <source>way of reading</source>
        <translation>modo de lectura</translation>
    </message>
    <message>
        <source>filter, sample rate, what counts as the level: alike in every pull</source>
        <translation>filtro, frecuencia de muestreo, qué cuenta como nivel: igual en cada tirón</translation>
    </message>
    <message>
        <source>lever's weight, not sensed</source>
        <translation>peso de la palanca, no medido</translation>
    </message>
    <message>
        <source>angle not known; over whole turns it averages to zero</source>
        <translation>ángulo desconocido; en vueltas completas se anula</translation>
    </message>
    <message>
        <source>lever, second order</source>
        <translation>palanca, segundo orden</translation>
    </message>
    <message>
        <source>JCGM 100, 5.1.2 note</source>
        <translation>JCGM 100, nota de 5.1.2</translation>
    </message>
    <message>
        <source>lever length</source>
        <translation>longitud de la palanca</translation>
    </message>
    <message>
        <source>stated</source>
        <translation>declarado</translation>
    </message>
    <message>
        <source>stud radius</source>
        <translation>radio de los espárragos</translation>
    </message>
    <message>
        <source>true zero</source>
        <translation>cero verdadero</translation>
    </message>
    <message>
        <source>lever angle</source>
        <translation>ángulo de la palanca</translation>
    </message>
    <message>
        <source>pull angle</source>
        <translation>ángulo del tirón</translation>
    </message>
    <message>
        <source>axle</source>
        <translation>eje</translation>
    </message>
    <message>
        <source>condition</source>
        <translation>condición</translation>
    </message>
    <message>
        <source>customer</source>
        <translation>cliente</translation>
    </message>
    <message>
        <source>date</source>
        <translation>fecha</translation>
    </message>
    <message>
        <source>direction</source>
        <translation>sentido</translation>
    </message>
    <message>
        <source>oil</source>
        <translation>aceite</translation>
    </message>
    <message>
        <source>job</source>
        <translation>trabajo</translation>
    </message>
    <message>
        <source>modifier</source>
        <translation>modificador</translation>
    </message>
    <message>
        <source>operator</source>
        <translation>operario</translation>
    </message>
    <message>
        <source>place</source>
        <translation>lugar</translation>
    </message>
    <message>
        <source>shim %1 in</source>
        <translation>suplemento %1 in</translation>
    </message>
    <message>
        <source>shim %1 mm</source>
        <translation>suplemento %1 mm</translation>
    </message>
    <message>
        <source>side</source>
        <translation>lado</translation>
    </message>
    <message>
        <source>type</source>
        <translation>tipo</translation>
    </message>
    <message>
        <source>vehicle</source>
        <translation>vehículo</translation>
    </message>
    <message>
        <source>Recording</source>
        <translation>Grabación</translation>
    </message>
    <message>
        <source>never slipped</source>
        <translation>nunca arrancó</translation>
    </message>
    <message>
        <source>left</source>
        <translation>izquierda</translation>
    </message>
    <message>
        <source>right</source>
        <translation>derecha</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>every second turn of the wheel</source>
        <translation>cada dos vueltas de la rueda</translation>
    </message>
    <message>
        <source>once per turn of the wheel</source>
        <translation>una vez por vuelta de la rueda</translation>
    </message>
    <message>
        <source>twice per turn of the wheel</source>
        <translation>dos veces por vuelta de la rueda</translation>
    </message>
    <message>
        <source>once per turn of the pinion</source>
        <translation>una vez por vuelta del piñón</translation>
    </message>
    <message>
        <source>twice per turn of the pinion</source>
        <translation>dos veces por vuelta del piñón</translation>
    </message>
    <message>
        <source>a plate or spring that is uneven: the packs slip once round in two turns of the wheel</source>
        <translation>un disco o muelle desigual: los paquetes deslizan una vuelta por cada dos de la rueda</translation>
    </message>
    <message>
        <source>a dragging brake, a bent hub, a bearing, an unbalanced wheel, the lever's own weight, or a pack's second wave</source>
        <translation>un freno que roza, un buje doblado, un rodamiento, una rueda desequilibrada, el peso de la palanca o la segunda onda de un paquete</translation>
    </message>
    <message>
        <source>an oval drum, a hub drawn out of true by its fixings, or a pack's fourth wave</source>
        <translation>un tambor ovalado, un buje deformado por su fijación o la cuarta onda de un paquete</translation>
    </message>
    <message>
        <source>gear mesh, a pinion bearing or flange out of true, an unbalanced propshaft</source>
        <translation>el engrane, un rodamiento o brida del piñón descentrado, un árbol de transmisión desequilibrado</translation>
    </message>
    <message>
        <source>a universal joint that works at an angle</source>
        <translation>una junta cardán que trabaja en ángulo</translation>
    </message>
    <message>
        <source>Whether the held wheel stayed cannot be told from one angle and the torque: mark tyre and floor with chalk, or record its angle, too (held_angle)</source>
        <translation>Si la rueda sujeta no se movió no se puede saber con un solo ángulo y el par: marque neumático y suelo con tiza o grabe también su ángulo (held_angle)</translation>
    </message>
    <message>
        <source>the held wheel turned with the other by %1° of %2°: its tyre or strap slipped, not the packs; hold it so that it stays, and pull again</source>
        <translation>la rueda sujeta giró %1° de %2°: resbaló su neumático o su correa, no los paquetes; sujétela para que no se mueva y repita el tirón</translation>
    </message>
    <message>
        <source>the held wheel gave by %1° under load: wind-up and stiffness are mostly of what holds it</source>
        <translation>la rueda sujeta cedió %1° bajo carga: la torsión y la rigidez son sobre todo de lo que la sujeta</translation>
    </message>
    <message>
        <source>Locker: both wheels up, in gear, engine off: turn one wheel forward to its stop: it must lock</source>
        <translation>Bloqueo: ambas ruedas en alto, marcha puesta, motor parado: gire una rueda adelante hasta el tope: debe bloquear</translation>
    </message>
    <message>
        <source>Locker: hold that wheel at its stop, turn the other backward: it must come free, with faint, even clicks</source>
        <translation>Bloqueo: sujete esa rueda en el tope y gire la otra hacia atrás: debe soltarse, con clics suaves y regulares</translation>
    </message>
    <message>
        <source>Locker: move that one back to its own stop: it must lock again</source>
        <translation>Bloqueo: vuelva esa otra hasta su tope: debe bloquear de nuevo</translation>
    </message>
    <message>
        <source>Locker: the same with the sides changed, and both in the other direction</source>
        <translation>Bloqueo: lo mismo con los lados cambiados, y ambos en el otro sentido</translation>
    </message>
    <message>
        <source>Viscous: turn one wheel slowly, the other held: it must give evenly, without a breakaway</source>
        <translation>Viscoso: gire despacio una rueda con la otra sujeta: debe ceder por igual, sin arranque</translation>
    </message>
    <message>
        <source>Viscous: turn it twice as fast: it must resist more; no resistance, or a lock when cold, is a worn-out unit</source>
        <translation>Viscoso: gírela al doble de velocidad: debe resistir más; sin resistencia, o bloqueada en frío, está agotada</translation>
    </message>
    <message>
        <source>Viscous: look for leaks: a sealed unit is changed, not refilled</source>
        <translation>Viscoso: busque fugas: una unidad sellada se cambia, no se rellena</translation>
    </message>
    <message>
        <source>Governor: both wheels up: its light plates may hardly hold; that is no fault</source>
        <translation>Centrífugo: ambas ruedas en alto: sus discos ligeros apenas sujetan; no es un fallo</translation>
    </message>
    <message>
        <source>Governor: whether it locks shows only at a difference of speed: as the maker's manual says, never by hand</source>
        <translation>Centrífugo: si bloquea solo se ve con diferencia de velocidad: según el manual del fabricante, nunca a mano</translation>
    </message>
    <message>
        <source>Geared: turn each wheel through two turns, gear in and neutral: even, without knocks or tight places</source>
        <translation>De engranajes: gire cada rueda dos vueltas, con marcha y en punto muerto: regular, sin golpes ni puntos duros</translation>
    </message>
    <message>
        <source>Geared: where the manual states a ratio in gear ÷ neutral, measure that</source>
        <translation>De engranajes: si el manual indica una relación con marcha ÷ en punto muerto, mídala</translation>
    </message>
    <message>
        <source>Open: turn each wheel through two turns: free and even, the other turns back as far</source>
        <translation>Abierto: gire cada rueda dos vueltas: libre y regular, la otra gira igual hacia atrás</translation>
    </message>
    <message>
        <source>Welded or spool: both wheels turn together, without slack between them</source>
        <translation>Soldado o rígido: ambas ruedas giran juntas, sin holgura entre ellas</translation>
    </message>
    <message>
        <source>%1: has no angle of the wheel: record one along, or name its column angle_deg</source>
        <translation>%1: no contiene el ángulo de la rueda: grábelo también, o llame a su columna angle_deg</translation>
    </message>
    <message>
        <source>Held-wheel torque test of a limited-slip differential</source>
        <translation>Ensayo de par de un diferencial autoblocante con una rueda sujeta</translation>
    </message>
    <message>
        <source>Limited-slip differential: torque in gear against neutral</source>
        <translation>Diferencial autoblocante: par con marcha frente a punto muerto</translation>
    </message>
    <message>
        <source>The results are those of the item described here, in the state and at the time of the test, and of nothing else.</source>
        <translation>Los resultados son del objeto aquí descrito, en el estado y en el momento del ensayo, y de nada más.</translation>
    </message>
    <message>
        <source>This page is valid only as a whole and is not to be copied in part.</source>
        <translation>Esta página solo vale entera y no debe copiarse en parte.</translation>
    </message>
    <message>
        <source>Not tested: behaviour under drive torque, wear of plates and gears, condition of the oil.</source>
        <translation>No ensayado: comportamiento con par motor, desgaste de discos y engranajes, estado del aceite.</translation>
    </message>
    <message>
        <source>A limit is compared with the torque as read: drag is in it, as in nearly every printed limit.</source>
        <translation>Un límite se compara con el par leído: incluye el arrastre, como casi todo límite impreso.</translation>
    </message>
    <message>
        <source>Torques and result: computed, and again by heldwheel-read report --verify.</source>
        <translation>Pares y resultado: calculados, y de nuevo con heldwheel-read report --verify.</translation>
    </message>
    <message>
        <source>Limit and all else: the issuer's word.</source>
        <translation>Límite y todo lo demás: palabra del emisor.</translation>
    </message>
    <message>
        <source>SIMULATED DATA</source>
        <translation>DATOS SIMULADOS</translation>
    </message>
    <message>
        <source>nothing here was measured on an axle</source>
        <translation>nada de esto se midió en un eje</translation>
    </message>
    <message>
        <source>within or outside only if the whole guarded interval lies on one side of the limit; otherwise too close to call</source>
        <translation>dentro o fuera solo si todo el intervalo con guarda está a un lado del límite; si no, demasiado cerca para decidir</translation>
    </message>
    <message>
        <source>the value alone is compared with the limit, its uncertainty is ignored</source>
        <translation>solo el valor se compara con el límite, sin tener en cuenta su incertidumbre</translation>
    </message>
    <message>
        <source>within only if the whole guarded interval conforms: the uncertainty counts against within</source>
        <translation>dentro solo si todo el intervalo con guarda cumple: la incertidumbre cuenta contra dentro</translation>
    </message>
    <message>
        <source>outside only if the whole guarded interval lies outside: the uncertainty counts against outside</source>
        <translation>fuera solo si todo el intervalo con guarda queda fuera: la incertidumbre cuenta contra fuera</translation>
    </message>
    <message>
        <source>risk of a wrong within or outside below %1</source>
        <translation>riesgo de un dentro o fuera erróneo menor de %1</translation>
    </message>
    <message>
        <source>at the limit up to half of all decisions are wrong (shared risk)</source>
        <translation>en el límite hasta la mitad de las decisiones son erróneas (riesgo compartido)</translation>
    </message>
    <message>
        <source>risk of a wrong within below %1; but what conforms by less than the guard band is called outside</source>
        <translation>riesgo de un dentro erróneo menor de %1; pero lo que cumple por menos de la banda de guarda se llama fuera</translation>
    </message>
    <message>
        <source>risk of a wrong outside below %1; but what fails by less than the guard band is called within</source>
        <translation>riesgo de un fuera erróneo menor de %1; pero lo que falla por menos de la banda de guarda se llama dentro</translation>
    </message>
    <message>
        <source>The measured torque lies within the limit, its uncertainty taken into account.</source>
        <translation>El par medido está dentro del límite, teniendo en cuenta su incertidumbre.</translation>
    </message>
    <message>
        <source>The measured torque lies outside the limit, its uncertainty taken into account.</source>
        <translation>El par medido está fuera del límite, teniendo en cuenta su incertidumbre.</translation>
    </message>
    <message>
        <source>The measured torque is too close to the limit to call: its interval covers the limit.</source>
        <translation>El par medido está demasiado cerca del límite para decidir: su intervalo cubre el límite.</translation>
    </message>
    <message>
        <source>The test did not give a value that may be judged. The reasons stand below.</source>
        <translation>El ensayo no dio un valor que pueda evaluarse. Los motivos están abajo.</translation>
    </message>
    <message>
        <source>The measured torque lies within the limit; its uncertainty was not considered.</source>
        <translation>El par medido está dentro del límite; su incertidumbre no se tuvo en cuenta.</translation>
    </message>
    <message>
        <source>The measured torque lies outside the limit; its uncertainty was not considered.</source>
        <translation>El par medido está fuera del límite; su incertidumbre no se tuvo en cuenta.</translation>
    </message>
    <message>
        <source>The measured torque was not shown to lie within the limit: by the rule agreed on, the uncertainty counts against it.</source>
        <translation>No se demostró que el par medido esté dentro del límite: según la regla acordada, la incertidumbre cuenta en contra.</translation>
    </message>
    <message>
        <source>The measured torque was not shown to lie outside the limit: by the rule agreed on, the uncertainty counts for it.</source>
        <translation>No se demostró que el par medido esté fuera del límite: según la regla acordada, la incertidumbre cuenta a favor.</translation>
    </message>
    <message>
        <source>The measured ratio lies within the limit, its uncertainty taken into account.</source>
        <translation>La relación medida está dentro del límite, teniendo en cuenta su incertidumbre.</translation>
    </message>
    <message>
        <source>The measured ratio lies outside the limit, its uncertainty taken into account.</source>
        <translation>La relación medida está fuera del límite, teniendo en cuenta su incertidumbre.</translation>
    </message>
    <message>
        <source>The measured ratio is too close to the limit to call: its interval covers the limit.</source>
        <translation>La relación medida está demasiado cerca del límite para decidir: su intervalo cubre el límite.</translation>
    </message>
    <message>
        <source>The measured ratio lies within the limit; its uncertainty was not considered.</source>
        <translation>La relación medida está dentro del límite; su incertidumbre no se tuvo en cuenta.</translation>
    </message>
    <message>
        <source>The measured ratio lies outside the limit; its uncertainty was not considered.</source>
        <translation>La relación medida está fuera del límite; su incertidumbre no se tuvo en cuenta.</translation>
    </message>
    <message>
        <source>The measured ratio was not shown to lie within the limit: by the rule agreed on, the uncertainty counts against it.</source>
        <translation>No se demostró que la relación medida esté dentro del límite: según la regla acordada, la incertidumbre cuenta en contra.</translation>
    </message>
    <message>
        <source>The measured ratio was not shown to lie outside the limit: by the rule agreed on, the uncertainty counts for it.</source>
        <translation>No se demostró que la relación medida esté fuera del límite: según la regla acordada, la incertidumbre cuenta a favor.</translation>
    </message>
    <message>
        <source>Functional test: %1; turned slowly by lever.</source>
        <translation>Ensayo funcional: %1; girado despacio con palanca.</translation>
    </message>
    <message>
        <source>in the car</source>
        <translation>en el coche</translation>
    </message>
    <message>
        <source>on the bench</source>
        <translation>en el banco</translation>
    </message>
    <message>
        <source>place not recorded</source>
        <translation>lugar no anotado</translation>
    </message>
    <message>
        <source>the other side held</source>
        <translation>el otro lado sujeto</translation>
    </message>
    <message>
        <source>the case held</source>
        <translation>la caja sujeta</translation>
    </message>
    <message>
        <source>nothing held (drag)</source>
        <translation>nada sujeto (arrastre)</translation>
    </message>
    <message>
        <source>held member not recorded</source>
        <translation>parte sujeta no anotada</translation>
    </message>
    <message>
        <source>gearbox in neutral</source>
        <translation>caja de cambios en punto muerto</translation>
    </message>
    <message>
        <source>gear engaged</source>
        <translation>marcha puesta</translation>
    </message>
    <message>
        <source>gear not recorded</source>
        <translation>marcha no anotada</translation>
    </message>
    <message>
        <source>left side turned</source>
        <translation>lado izquierdo girado</translation>
    </message>
    <message>
        <source>right side turned</source>
        <translation>lado derecho girado</translation>
    </message>
    <message>
        <source>wheel fitted</source>
        <translation>rueda montada</translation>
    </message>
    <message>
        <source>wheel off</source>
        <translation>rueda quitada</translation>
    </message>
    <message>
        <source>brakes free</source>
        <translation>frenos libres</translation>
    </message>
    <message>
        <source>BRAKES NOT FREE</source>
        <translation>FRENOS NO LIBRES</translation>
    </message>
    <message>
        <source>pads fitted</source>
        <translation>pastillas montadas</translation>
    </message>
    <message>
        <source>pads out</source>
        <translation>pastillas quitadas</translation>
    </message>
    <message>
        <source>parking brake off</source>
        <translation>freno de mano suelto</translation>
    </message>
    <message>
        <source>PARKING BRAKE ON</source>
        <translation>FRENO DE MANO PUESTO</translation>
    </message>
    <message>
        <source>propshaft fitted</source>
        <translation>árbol de transmisión montado</translation>
    </message>
    <message>
        <source>propshaft off</source>
        <translation>árbol de transmisión quitado</translation>
    </message>
    <message>
        <source>Speed aimed at %1 turns a minute.</source>
        <translation>Velocidad prevista: %1 vueltas por minuto.</translation>
    </message>
    <message>
        <source>Turned %1 times before the first pull.</source>
        <translation>Girado %1 veces antes del primer tirón.</translation>
    </message>
    <message>
        <source>Rest before each pull %1 s.</source>
        <translation>Reposo antes de cada tirón %1 s.</translation>
    </message>
    <message>
        <source>The same again with the gearbox in neutral.</source>
        <translation>Lo mismo otra vez con la caja en punto muerto.</translation>
    </message>
    <message>
        <source>In neutral:</source>
        <translation>En punto muerto:</translation>
    </message>
    <message>
        <source>In gear:</source>
        <translation>Con marcha:</translation>
    </message>
    <message>
        <source>Neutral:</source>
        <translation>Punto muerto:</translation>
    </message>
    <message>
        <source>Guard band w = %1</source>
        <translation>Banda de guarda w = %1</translation>
    </message>
    <message>
        <source>simple</source>
        <translation>simple</translation>
    </message>
    <message>
        <source>guarded acceptance</source>
        <translation>aceptación con guarda</translation>
    </message>
    <message>
        <source>guarded rejection</source>
        <translation>rechazo con guarda</translation>
    </message>
    <message>
        <source>Customer report</source>
        <translation>Informe para el cliente</translation>
    </message>
    <message>
        <source>Engineer report</source>
        <translation>Informe técnico</translation>
    </message>
    <message>
        <source>(workshop not stated)</source>
        <translation>(taller sin indicar)</translation>
    </message>
    <message>
        <source>Limit:</source>
        <translation>Límite:</translation>
    </message>
    <message>
        <source>Probability of conformity:</source>
        <translation>Probabilidad de conformidad:</translation>
    </message>
    <message>
        <source>Rule:</source>
        <translation>Regla:</translation>
    </message>
    <message>
        <source>No pull gave a value that may be used.</source>
        <translation>Ningún tirón dio un valor utilizable.</translation>
    </message>
    <message>
        <source>end of</source>
        <translation>fin de</translation>
    </message>
    <message>
        <source>page</source>
        <translation>página</translation>
    </message>
    <message>
        <source>of</source>
        <translation>de</translation>
    </message>
    <message>
        <source>revision %1</source>
        <translation>revisión %1</translation>
    </message>
    <message>
        <source>issued %1</source>
        <translation>emitido %1</translation>
    </message>
    <message>
        <source>tested by</source>
        <translation>ensayado por</translation>
    </message>
    <message>
        <source>tested by %1</source>
        <translation>ensayado por %1</translation>
    </message>
    <message>
        <source>authorised by</source>
        <translation>autorizado por</translation>
    </message>
    <message>
        <source>authorised by %1</source>
        <translation>autorizado por %1</translation>
    </message>
    <message>
        <source>issued</source>
        <translation>emitido</translation>
    </message>
    <message>
        <source>tested</source>
        <translation>ensayado</translation>
    </message>
    <message>
        <source>received</source>
        <translation>recibido</translation>
    </message>
    <message>
        <source>not recorded</source>
        <translation>sin anotar</translation>
    </message>
    <message>
        <source>odometer</source>
        <translation>cuentakilómetros</translation>
    </message>
    <message>
        <source>type seen</source>
        <translation>tipo observado</translation>
    </message>
    <message>
        <source>ratio</source>
        <translation>relación</translation>
    </message>
    <message>
        <source>pack</source>
        <translation>paquete</translation>
    </message>
    <message>
        <source>last service</source>
        <translation>último servicio</translation>
    </message>
    <message>
        <source>as received</source>
        <translation>al recibirlo</translation>
    </message>
    <message>
        <source>done at</source>
        <translation>lugar</translation>
    </message>
    <message>
        <source>witness</source>
        <translation>testigo</translation>
    </message>
    <message>
        <source>tyre</source>
        <translation>neumático</translation>
    </message>
    <message>
        <source>held by</source>
        <translation>sujeta con</translation>
    </message>
    <message>
        <source>stands on</source>
        <translation>apoya en</translation>
    </message>
    <message>
        <source>notes</source>
        <translation>notas</translation>
    </message>
    <message>
        <source>transducer</source>
        <translation>transductor</translation>
    </message>
    <message>
        <source>capacity</source>
        <translation>capacidad</translation>
    </message>
    <message>
        <source>accuracy</source>
        <translation>exactitud</translation>
    </message>
    <message>
        <source>certificate</source>
        <translation>certificado</translation>
    </message>
    <message>
        <source>checked</source>
        <translation>comprobado</translation>
    </message>
    <message>
        <source>rate</source>
        <translation>frecuencia</translation>
    </message>
    <message>
        <source>none recorded</source>
        <translation>ninguno anotado</translation>
    </message>
    <message>
        <source>used</source>
        <translation>usado</translation>
    </message>
    <message>
        <source>run in</source>
        <translation>rodado</translation>
    </message>
    <message>
        <source>ratio %1</source>
        <translation>relación %1</translation>
    </message>
    <message>
        <source>teeth %1</source>
        <translation>dientes %1</translation>
    </message>
    <message>
        <source>firmware %1</source>
        <translation>versión %1</translation>
    </message>
    <message>
        <source>of %1</source>
        <translation>del %1</translation>
    </message>
    <message>
        <source>due %1</source>
        <translation>vence %1</translation>
    </message>
    <message>
        <source>EXPIRED at the time of the test</source>
        <translation>CADUCADO en el momento del ensayo</translation>
    </message>
    <message>
        <source>temperature not recorded</source>
        <translation>temperatura sin anotar</translation>
    </message>
    <message>
        <source>± %1 % of %2 (95 %)</source>
        <translation>± %1 % %2 (95 %)</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>de la lectura</translation>
    </message>
    <message>
        <source>full scale</source>
        <translation>de la capacidad</translation>
    </message>
    <message>
        <source>filter delay %1</source>
        <translation>retardo del filtro %1</translation>
    </message>
    <message>
        <source>%1 samples/s</source>
        <translation>%1 muestras/s</translation>
    </message>
    <message>
        <source>noise %1</source>
        <translation>ruido %1</translation>
    </message>
    <message>
        <source>between %1 and %2</source>
        <translation>entre %1 y %2</translation>
    </message>
    <message>
        <source>both sides' turns taken twice</source>
        <translation>vueltas de ambos lados contadas dos veces</translation>
    </message>
    <message>
        <source>at the axle</source>
        <translation>en el eje</translation>
    </message>
    <message>
        <source>at the sensor</source>
        <translation>en el transductor</translation>
    </message>
    <message>
        <source>fixture not known</source>
        <translation>utillaje no conocido</translation>
    </message>
    <message>
        <source>interval 95 %</source>
        <translation>intervalo del 95 %</translation>
    </message>
    <message>
        <source>no interval</source>
        <translation>sin intervalo</translation>
    </message>
    <message>
        <source>scatter %1</source>
        <translation>dispersión %1</translation>
    </message>
    <message>
        <source>1 reading</source>
        <translation>1 lectura</translation>
    </message>
    <message>
        <source>rotating maxima</source>
        <translation>pares de giro máximos</translation>
    </message>
    <message>
        <source>both free</source>
        <translation>ambas libres</translation>
    </message>
    <message>
        <source>torque at the axle</source>
        <translation>par en el eje</translation>
    </message>
    <message>
        <source>torque at the sensor</source>
        <translation>par en el transductor</translation>
    </message>
    <message>
        <source>time, s</source>
        <translation>t, s</translation>
    </message>
    <message>
        <source>dashed: %1</source>
        <translation>a trazos: %1</translation>
    </message>
    <message>
        <source>Torque against time, 1 pull marked</source>
        <translation>Par frente al tiempo, 1 tirón marcado</translation>
    </message>
    <message>
        <source>Torque against time, %1 pulls marked</source>
        <translation>Par frente al tiempo, %1 tirones marcados</translation>
    </message>
    <message>
        <source>%1 readings of a dial with their intervals</source>
        <translation>%1 lecturas de una esfera con sus intervalos</translation>
    </message>
    <message>
        <source>ring with B: breakaway</source>
        <translation>anillo con B: par de arranque</translation>
    </message>
    <message>
        <source>ring alone: slip began without a peak</source>
        <translation>anillo solo: el deslizamiento empezó sin pico</translation>
    </message>
    <message>
        <source>thick: steady rotation</source>
        <translation>grueso: giro constante</translation>
    </message>
    <message>
        <source>numbered bar: pull, crossed if not used</source>
        <translation>barra numerada: tirón, tachado si no se usa</translation>
    </message>
    <message>
        <source>shaded: conforms</source>
        <translation>sombreado: cumple</translation>
    </message>
    <message>
        <source>shaded: conforms.</source>
        <translation>sombreado: cumple.</translation>
    </message>
    <message>
        <source>positive: clockwise from outside.</source>
        <translation>positivo: horario desde fuera.</translation>
    </message>
    <message>
        <source>Ring: a reading at the axle, with its interval (95 %)</source>
        <translation>Anillo: una lectura en el eje, con su intervalo (95 %)</translation>
    </message>
    <message>
        <source>Ring: a reading at the axle, with its interval (95 %).</source>
        <translation>Anillo: una lectura en el eje, con su intervalo (95 %).</translation>
    </message>
    <message>
        <source>Excluded pulls and warnings</source>
        <translation>Tirones excluidos y avisos</translation>
    </message>
    <message>
        <source>Test and conditions</source>
        <translation>Ensayo y condiciones</translation>
    </message>
    <message>
        <source>Corrections</source>
        <translation>Correcciones</translation>
    </message>
    <message>
        <source>Remarks</source>
        <translation>Observaciones</translation>
    </message>
    <message>
        <source>Evidence</source>
        <translation>Evidencias</translation>
    </message>
    <message>
        <source>Readings of the dial</source>
        <translation>Lecturas de la esfera</translation>
    </message>
    <message>
        <source>Drag taken off</source>
        <translation>Arrastre descontado</translation>
    </message>
    <message>
        <source>Uncertainty of the %1</source>
        <translation>Incertidumbre: %1</translation>
    </message>
    <message>
        <source>Uncertainty of %1</source>
        <translation>Incertidumbre: %1</translation>
    </message>
    <message>
        <source>Combined u = %1, ν = %2, U (95 %) = %3 (JCGM 100).</source>
        <translation>Combinada u = %1, ν = %2, U (95 %) = %3 (JCGM 100).</translation>
    </message>
    <message>
        <source>Below %1 % each:</source>
        <translation>Menos del %1 % cada una:</translation>
    </message>
    <message>
        <source>no.</source>
        <translation>n.º</translation>
    </message>
    <message>
        <source>at, s</source>
        <translation>a los, s</translation>
    </message>
    <message>
        <source>turn</source>
        <translation>giro</translation>
    </message>
    <message>
        <source>at sensor</source>
        <translation>transd.</translation>
    </message>
    <message>
        <source>maximum</source>
        <translation>máximo</translation>
    </message>
    <message>
        <source>chatter</source>
        <translation>vibración</translation>
    </message>
    <message>
        <source>remark</source>
        <translation>nota</translation>
    </message>
    <message>
        <source>cw</source>
        <translation>hor.</translation>
    </message>
    <message>
        <source>ccw</source>
        <translation>antih.</translation>
    </message>
    <message>
        <source>no peak</source>
        <translation>sin pico</translation>
    </message>
    <message>
        <source>half</source>
        <translation>mitad</translation>
    </message>
    <message>
        <source>input</source>
        <translation>magnitud</translation>
    </message>
    <message>
        <source>share</source>
        <translation>parte</translation>
    </message>
    <message>
        <source>part</source>
        <translation>aporte</translation>
    </message>
    <message>
        <source>value</source>
        <translation>valor</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>unidad</translation>
    </message>
    <message>
        <source>sensitivity</source>
        <translation>sensib.</translation>
    </message>
    <message>
        <source>quantity</source>
        <translation>magnitud</translation>
    </message>
    <message>
        <source>rolling</source>
        <translation>rodando</translation>
    </message>
    <message>
        <source>as read</source>
        <translation>leído</translation>
    </message>
    <message>
        <source>pack mean</source>
        <translation>media de paquetes</translation>
    </message>
    <message>
        <source>how</source>
        <translation>cómo</translation>
    </message>
    <message>
        <source>withheld</source>
        <translation>omitida</translation>
    </message>
    <message>
        <source>as above</source>
        <translation>como arriba</translation>
    </message>
    <message>
        <source>forwards</source>
        <translation>adelante</translation>
    </message>
    <message>
        <source>backwards</source>
        <translation>atrás</translation>
    </message>
    <message>
        <source>Fixture: %1.</source>
        <translation>Utillaje: %1.</translation>
    </message>
    <message>
        <source>Fixture: %1; torque at the axle = %2 × torque at the sensor.</source>
        <translation>Utillaje: %1; par en el eje = %2 × par en el transductor.</translation>
    </message>
    <message>
        <source>Fixture: %1. Zero: as set on the dial.</source>
        <translation>Utillaje: %1. Cero: como está puesto en la esfera.</translation>
    </message>
    <message>
        <source>Fixture: %1; torque at the axle = %2 × torque on the dial. Zero: as set on the dial.</source>
        <translation>Utillaje: %1; par en el eje = %2 × par en la esfera. Cero: como está puesto en la esfera.</translation>
    </message>
    <message>
        <source>not known; torque at the axle is not stated</source>
        <translation>no conocido; par en el eje sin indicar</translation>
    </message>
    <message>
        <source>length %1</source>
        <translation>longitud %1</translation>
    </message>
    <message>
        <source>stud circle %1</source>
        <translation>círculo de espárragos %1</translation>
    </message>
    <message>
        <source>%1 studs</source>
        <translation>%1 espárragos</translation>
    </message>
    <message>
        <source>chord %1</source>
        <translation>distancia entre espárragos %1</translation>
    </message>
    <message>
        <source>lever angle %1</source>
        <translation>ángulo de la palanca %1</translation>
    </message>
    <message>
        <source>pull angle %1</source>
        <translation>ángulo del tirón %1</translation>
    </message>
    <message>
        <source>drive offset %1</source>
        <translation>desfase del cuadrado %1</translation>
    </message>
    <message>
        <source>radius %1</source>
        <translation>radio %1</translation>
    </message>
    <message>
        <source>cord %1</source>
        <translation>cuerda %1</translation>
    </message>
    <message>
        <source>lever mass %1</source>
        <translation>masa de la palanca %1</translation>
    </message>
    <message>
        <source>its centre %1 from the drive</source>
        <translation>su centro a %1 del cuadrado</translation>
    </message>
    <message>
        <source>Zero %1:</source>
        <translation>Cero %1:</translation>
    </message>
    <message>
        <source>the trace's unloaded level</source>
        <translation>el nivel sin carga del trazo</translation>
    </message>
    <message>
        <source>Each pull is read from its own hand-off level, and at the axle from the true zero.</source>
        <translation>Cada tirón se lee desde su propio nivel sin manos, y en el eje desde el cero verdadero.</translation>
    </message>
    <message>
        <source>Zero taken again after the pulls: it had moved by %1.</source>
        <translation>Cero tomado otra vez tras los tirones: se había movido %1.</translation>
    </message>
    <message>
        <source>Known gain %1 (reading / true) divided out.</source>
        <translation>Ganancia conocida %1 (lectura / real) descontada.</translation>
    </message>
    <message>
        <source>Deviations from the method: %1</source>
        <translation>Desviaciones del método: %1</translation>
    </message>
    <message>
        <source>%1 of %2 pulls not used:</source>
        <translation>%1 de %2 tirones no usados:</translation>
    </message>
    <message>
        <source>1 of 1 pull not used:</source>
        <translation>1 de 1 tirón no usado:</translation>
    </message>
    <message>
        <source>pull %1:</source>
        <translation>tirón %1:</translation>
    </message>
    <message>
        <source>file</source>
        <translation>archivo</translation>
    </message>
    <message>
        <source>what it is</source>
        <translation>qué es</translation>
    </message>
    <message>
        <source>both wheels free</source>
        <translation>ambas ruedas libres</translation>
    </message>
    <message>
        <source>stated and decided beside it</source>
        <translation>lo declarado y decidido aparte</translation>
    </message>
    <message>
        <source>photo: %1</source>
        <translation>foto: %1</translation>
    </message>
    <message>
        <source>no caption</source>
        <translation>sin pie de foto</translation>
    </message>
    <message>
        <source>%1 more photos are named in the recording.</source>
        <translation>El registro nombra %1 fotos más.</translation>
    </message>
    <message>
        <source>recording</source>
        <translation>registro</translation>
    </message>
    <message>
        <source>NOT as it was closed; what checks was used</source>
        <translation>NO como se cerró; se usó lo comprobable</translation>
    </message>
    <message>
        <source>a trace from elsewhere</source>
        <translation>un trazo de otro origen</translation>
    </message>
    <message>
        <source>readings of a dial</source>
        <translation>lecturas de una esfera</translation>
    </message>
    <message>
        <source>NOT as it was signed</source>
        <translation>NO como se firmó</translation>
    </message>
    <message>
        <source>what was read</source>
        <translation>qué se leyó</translation>
    </message>
    <message>
        <source>dial</source>
        <translation>esfera</translation>
    </message>
    <message>
        <source>scale</source>
        <translation>escala</translation>
    </message>
    <message>
        <source>read from</source>
        <translation>leído en</translation>
    </message>
    <message>
        <source>a dial, by eye; there is no trace</source>
        <translation>una esfera, a ojo; no hay trazo</translation>
    </message>
    <message>
        <source>division %1</source>
        <translation>división %1</translation>
    </message>
    <message>
        <source>class %1</source>
        <translation>clase %1</translation>
    </message>
    <message>
        <source>p. %1</source>
        <translation>pág. %1</translation>
    </message>
    <message>
        <source>%1 pulls</source>
        <translation>%1 tirones</translation>
    </message>
    <message>
        <source>next, try '%1'</source>
        <translation>pruebe después «%1»</translation>
    </message>
    <message>
        <source>the stud lies %1 mm off the centre, the lever is %2 mm long: check units</source>
        <translation>el espárrago está a %1 mm del centro y la palanca mide %2 mm: revise las unidades</translation>
    </message>
    <message>
        <source>true zero (%1)</source>
        <translation>cero verdadero (%1)</translation>
    </message>
    <message>
        <source>pull at %1 s: %2</source>
        <translation>tirón en %1 s: %2</translation>
    </message>
    <message>
        <source>breakaway at %1 s</source>
        <translation>arranque en %1 s</translation>
    </message>
    <message>
        <source>not seen, below %1°</source>
        <translation>no visto, menos de %1°</translation>
    </message>
    <message>
        <source>%1, guard band w = %2</source>
        <translation>%1, banda de guarda w = %2</translation>
    </message>
    <message>
        <source>Not judged: %1.</source>
        <translation>Sin evaluar: %1.</translation>
    </message>
    <message>
        <source>true zero (lever off)</source>
        <translation>cero verdadero (sin palanca)</translation>
    </message>
    <message>
        <source>assumed ± %1</source>
        <translation>supuesto ± %1</translation>
    </message>
    <message>
        <source>Pull %1, not seen: %2</source>
        <translation>Tirón %1, no se ve: %2</translation>
    </message>
    <message>
        <source>Pull %1, cannot be told in %2 steady turns: %3</source>
        <translation>Tirón %1, no se distingue en %2 vueltas uniformes: %3</translation>
    </message>
    <message>
        <source>Pull %1, what repeats per turn: cannot be told, too much varies that does not repeat</source>
        <translation>Tirón %1, lo que se repite por vuelta: no se distingue, varía demasiado lo que no se repite</translation>
    </message>
    <message>
        <source>lever hanging</source>
        <translation>palanca colgando</translation>
    </message>
    <message>
        <source>lever off</source>
        <translation>sin palanca</translation>
    </message>
    <message>
        <source>unloaded</source>
        <translation>sin carga</translation>
    </message>
    <message>
        <source>one wheel is held by the floor and a strap, the other is raised on a stand; the lever points outward, in line with wheel centre and stud; the pull is square; the lever hangs free, nobody touches it, the zero is taken; torque rises smoothly in two to three seconds to B, the breakaway, then stays at R; keep turning slowly for two turns while the wheel moves; otherwise stop</source>
        <translation>una rueda está sujeta por el suelo y una cincha, la otra levantada sobre un caballete; la palanca apunta hacia fuera, en línea con el centro de la rueda y el espárrago; el tirón va a escuadra; la palanca cuelga libre, nadie la toca, se toma el cero; el par sube con suavidad en dos o tres segundos hasta B, el arranque, y queda en R; siga girando despacio dos vueltas mientras la rueda se mueva; si no, pare</translation>
    </message>
    <message>
        <source>1  Hold one wheel</source>
        <translation>1  Sujetar rueda</translation>
    </message>
    <message>
        <source>2  Lever in line</source>
        <translation>2  Palanca en línea</translation>
    </message>
    <message>
        <source>3  Zero</source>
        <translation>3  Cero</translation>
    </message>
    <message>
        <source>4  Load smoothly</source>
        <translation>4  Con suavidad</translation>
    </message>
    <message>
        <source>5  Keep turning</source>
        <translation>5  Siga girando</translation>
    </message>
    <message>
        <source>Common practice, no source, unless one is named; the vehicle maker's manual, local rules and qualified people decide.</source>
        <translation>Práctica común, sin fuente, si no se nombra una; deciden el manual del fabricante, las normas locales y personas cualificadas.</translation>
    </message>
    <message>
        <source>Record ten figure-eights and a stretch without turning, 20 s and more, as WAV or as a table of acceleration. To compare: same microphone, place, gain, ground and speed, warm oil.</source>
        <translation>Registrar diez ochos y un tramo sin girar, 20 s o más, como WAV o como tabla de aceleración. Para comparar: mismo micrófono, lugar, ganancia, suelo y velocidad, aceite caliente.</translation>
    </message>
    <message>
        <source>Chatter by its level in a frequency band: no torque, no limit, no result.</source>
        <translation>Vibración por su nivel en una banda de frecuencias: ni par, ni límite, ni resultado.</translation>
    </message>
    <message>
        <source>The bench's chatter index is the swing of a torque turned by hand: another speed, another load, no common scale.</source>
        <translation>El índice de vibración del banco es la oscilación de un par girado a mano: otra velocidad, otra carga, sin escala común.</translation>
    </message>
    <message>
        <source>The interval is the scatter within the two drives alone: speed, road, oil temperature and where the microphone lies add to it.</source>
        <translation>El intervalo es solo la dispersión dentro de los dos recorridos: velocidad, firme, temperatura del aceite y lugar del micrófono se suman.</translation>
    </message>
    <message>
        <source>dB re full-scale sine</source>
        <translation>dB re seno a fondo de escala</translation>
    </message>
    <message>
        <source>It cannot tell chatter from gear whine, tyre squeal, road noise or anything else at these frequencies: listen to each event.</source>
        <translation>No distingue la vibración del zumbido de engranajes, el chirrido de neumáticos, el ruido de rodadura u otra cosa en estas frecuencias: escuche cada evento.</translation>
    </message>
    <message>
        <source>A change of speed, surface or window counts as an event if it is louder; chatter that never pauses is background.</source>
        <translation>Un cambio de velocidad, de firme o de ventanilla cuenta como evento si suena más; una vibración sin pausa es fondo.</translation>
    </message>
    <message>
        <source>A telephone that sets its own gain moves every level: switch that off, or compare shares of time alone.</source>
        <translation>Un teléfono que ajusta su propia ganancia desplaza todos los niveles: desactívelo, o compare solo las partes del tiempo.</translation>
    </message>
    <message>
        <source>Event %1: %2 to %3 s, %4 dB</source>
        <translation>Evento %1: %2 a %3 s, %4 dB</translation>
    </message>
    <message>
        <source>Event %1: %2 to %3 s, %4 dB, clipped</source>
        <translation>Evento %1: %2 a %3 s, %4 dB, saturado</translation>
    </message>
    <message>
        <source>clipped for %1 s: levels there are too low; record with less gain</source>
        <translation>saturado durante %1 s: los niveles ahí son demasiado bajos; registre con menos ganancia</translation>
    </message>
    <message>
        <source>Events that stand out: %1, %2 s in all, %3 % of %4 s.</source>
        <translation>Eventos que destacan: %1, %2 s en total, %3 % de %4 s.</translation>
    </message>
    <message>
        <source>Frequency band %1 to %2 Hz; levels in %3.</source>
        <translation>Banda de frecuencias de %1 a %2 Hz; niveles en %3.</translation>
    </message>
    <message>
        <source>Level of the whole %1 dB; quiet background %2 dB; an event begins at %3 dB.</source>
        <translation>Nivel del conjunto %1 dB; fondo en calma %2 dB; un evento empieza en %3 dB.</translation>
    </message>
    <message>
        <source>the quiet backgrounds differ by %1 dB: gain, place, speed or road were not the same</source>
        <translation>los fondos en calma difieren en %1 dB: la ganancia, el lugar, la velocidad o el firme no eran los mismos</translation>
    </message>
    <message>
        <source>the largest acceleration stands several times in a row: it may be cut, and levels there are too low</source>
        <translation>la mayor aceleración se repite varias veces seguidas: puede estar recortada, y los niveles ahí son demasiado bajos</translation>
    </message>
    <message>
        <source>In this frequency band %1 m/s² rms, the axes together.</source>
        <translation>En esta banda de frecuencias %1 m/s² eficaces, los ejes juntos.</translation>
    </message>
    <message>
        <source>Bench, axle %1, %2: chatter index %3.</source>
        <translation>Banco, eje %1, %2: índice de vibración %3.</translation>
    </message>
    <message>
        <source>Against %1: level %2 ± %3 dB (95 %); share of time %4 points.</source>
        <translation>Frente a %1: nivel %2 ± %3 dB (95 %); parte del tiempo %4 puntos.</translation>
    </message>
    <message>
        <source>'%1' is no frequency band; write it as 50-800Hz</source>
        <translation>«%1» no es una banda de frecuencias; escríbala como 50-800Hz</translation>
    </message>
    <message>
        <source>No recording of axle %1 with a chatter index lies there.</source>
        <translation>Ahí no hay ningún registro del eje %1 con índice de vibración.</translation>
    </message>
    <message>
        <source>the frequency band %1 to %2 Hz does not fit: at %3 samples a second it must lie between 0 and %4 Hz, its upper end a fifth above its lower end at least</source>
        <translation>la banda de frecuencias de %1 a %2 Hz no cabe: con %3 muestras por segundo debe estar entre 0 y %4 Hz, su extremo superior al menos un quinto por encima del inferior</translation>
    </message>
    <message>
        <source>%1 s are too short: the background takes %2 s at least</source>
        <translation>%1 s son pocos: el fondo necesita al menos %2 s</translation>
    </message>
    <message>
        <source>%1 s with a level are too short: the background takes %2 s</source>
        <translation>%1 s con nivel son pocos: el fondo necesita %2 s</translation>
    </message>
    <message>
        <source>a sound and an acceleration, or two frequency bands, have no difference in dB: compare like with like</source>
        <translation>un sonido y una aceleración, o dos bandas de frecuencias, no tienen diferencia en dB: compare lo igual con lo igual</translation>
    </message>
    <message>
        <source>%1 s are too short to compare: %2 s at least</source>
        <translation>%1 s son pocos para comparar: al menos %2 s</translation>
    </message>
    <message>
        <source>Recording before: %1</source>
        <translation>Registro anterior: %1</translation>
    </message>
    <message>
        <source>gaps of %1 s in all have no level</source>
        <translation>huecos de %1 s en total no tienen nivel</translation>
    </message>
    <message>
        <source>%1 rows without a time or an acceleration are passed over</source>
        <translation>se pasan por alto %1 filas sin tiempo o sin aceleración</translation>
    </message>
    <message>
        <source>%1: has no column of acceleration: a heading with its unit, like 'x [m/s²]' or 'x [g]'; a sound is read from WAV</source>
        <translation>%1: no tiene columna de aceleración: un encabezado con su unidad, como «x [m/s²]» o «x [g]»; el sonido se lee de WAV</translation>
    </message>
    <message>
        <source>%1: has no column of time, in seconds; a sound is read from WAV</source>
        <translation>%1: no tiene columna de tiempo, en segundos; el sonido se lee de WAV</translation>
    </message>
    <message>
        <source>%1: is a packed sound; save the recording as WAV (PCM)</source>
        <translation>%1: es un sonido comprimido; guarde el registro como WAV (PCM)</translation>
    </message>
    <message>
        <source>%1: is no WAV inside; save the recording as WAV (PCM)</source>
        <translation>%1: por dentro no es WAV; guarde el registro como WAV (PCM)</translation>
    </message>
    <message>
        <source>%1: cannot be read as WAV: %2; save the recording as WAV (PCM)</source>
        <translation>%1: no se puede leer como WAV: %2; guarde el registro como WAV (PCM)</translation>
    </message>
    <message>
        <source>Drive figure-eights only on closed ground, slowly, with nobody near; a second person records, the driver drives.</source>
        <translation>Haga ochos solo en terreno cerrado, despacio y sin nadie cerca; una segunda persona registra, el conductor conduce.</translation>
    </message>
    <message>
        <source>Local law and the maker's manual come first; stop at knocking, binding or a wheel that locks.</source>
        <translation>La ley local y el manual del fabricante van primero; pare si golpea, se agarrota o se bloquea una rueda.</translation>
    </message>
    <message>
        <source>Microphone or accelerometer fixed so that it can neither fall nor reach the pedals, belts or wheels.</source>
        <translation>Micrófono o acelerómetro fijado de modo que no pueda caer ni alcanzar pedales, correas o ruedas.</translation>
    </message>
    <message>
        <source>Unlike tyres keep the differential turning: its packs slip and heat.</source>
        <translation>Neumáticos desiguales mantienen girando el diferencial: sus paquetes deslizan y se calientan.</translation>
    </message>
    <message>
        <source>Measure both alike: same pressure, same load, rolled out over one turn or taped round the tread.</source>
        <translation>Mida ambos igual: misma presión, misma carga, rodados una vuelta o con cinta alrededor de la banda de rodadura.</translation>
    </message>
    <message>
        <source>Above 1 % of the circumference: put like tyres on this axle before its packs are judged or renewed.</source>
        <translation>Más del 1 % de la circunferencia: ponga neumáticos iguales en este eje antes de juzgar o renovar sus paquetes.</translation>
    </message>
    <message>
        <source>Below 1 % of the circumference.</source>
        <translation>Menos del 1 % de la circunferencia.</translation>
    </message>
    <message>
        <source>Whether that is above 1 % of the circumference cannot be told: measure more exactly.</source>
        <translation>No se puede decir si eso supera el 1 % de la circunferencia: mida con más exactitud.</translation>
    </message>
    <message>
        <source>1 % is common practice, no source; the maker's manual comes first.</source>
        <translation>El 1 % es práctica común, sin fuente; el manual del fabricante va primero.</translation>
    </message>
    <message>
        <source>Both tyres are alike.</source>
        <translation>Ambos neumáticos son iguales.</translation>
    </message>
    <message>
        <source>The left tyre is larger by %1.</source>
        <translation>El neumático izquierdo es mayor en %1.</translation>
    </message>
    <message>
        <source>The right tyre is larger by %1.</source>
        <translation>El neumático derecho es mayor en %1.</translation>
    </message>
    <message>
        <source>At %1 km/h, straight ahead, the wheels differ by %2 turns a minute: each pack slips at %3, and %4 turns on every kilometre at any speed.</source>
        <translation>A %1 km/h, en línea recta, las ruedas difieren en %2 vueltas por minuto: cada paquete desliza a %3, y %4 vueltas en cada kilómetro a cualquier velocidad.</translation>
    </message>
    <message>
        <source>the %1 circumference is %2 m: it must lie between %3 m and %4 m; give the circumference, not the diameter, with its unit</source>
        <translation>la circunferencia, %1, es %2 m: debe estar entre %3 m y %4 m; dé la circunferencia, no el diámetro, con su unidad</translation>
    </message>
    <message>
        <source>an uncertainty and a speed cannot be negative</source>
        <translation>una incertidumbre y una velocidad no pueden ser negativas</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral, engine off. Lever off, push the wheel by hand, stand clear: hands and clothes off what turns.</source>
        <translation>Ambas ruedas motrices levantadas, punto muerto, motor apagado. Palanca fuera, empuje la rueda a mano, apártese: manos y ropa lejos de lo que gira.</translation>
    </message>
    <message>
        <source>Its drag first, with the transducer, at about that speed; then the wheel's angle is recorded from the push until it stands.</source>
        <translation>Primero su arrastre, con el transductor, a más o menos esa velocidad; luego se registra el ángulo de la rueda desde el empuje hasta que se para.</translation>
    </message>
    <message>
        <source>The inertia is that of everything that turned, referred to the wheel; it changes no reading.</source>
        <translation>La inercia es la de todo lo que giraba, referida a la rueda; no cambia ninguna lectura.</translation>
    </message>
    <message>
        <source>Inertia %1 ± %2 kg·m² (95 %): slows by %3 rad/s² from %4 to %5 s, from %6 turns a minute on.</source>
        <translation>Inercia %1 ± %2 kg·m² (95 %): frena a %3 rad/s² de %4 a %5 s, desde %6 vueltas por minuto.</translation>
    </message>
    <message>
        <source>The drag's uncertainty is assumed: 5 % of it.</source>
        <translation>La incertidumbre del arrastre es supuesta: un 5 % de él.</translation>
    </message>
    <message>
        <source>For less than 2 % of %1: accelerate by less than %2 rad/s², %3 turns a minute in %4 s or more.</source>
        <translation>Para menos del 2 % de %1: acelere menos de %2 rad/s², %3 vueltas por minuto en %4 s o más.</translation>
    </message>
    <message>
        <source>the drag must be above zero: turn the same parts with the transducer first (a drag test)</source>
        <translation>el arrastre debe ser mayor que cero: gire primero las mismas piezas con el transductor (prueba de arrastre)</translation>
    </message>
    <message>
        <source>nothing slows down in this recording: spin the wheel, let it run, and record until it stands</source>
        <translation>nada frena en este registro: haga girar la rueda, déjela correr y registre hasta que se pare</translation>
    </message>
    <message>
        <source>there is no spin-down: the angle must be recorded while the wheel turns half a turn and more</source>
        <translation>no hay giro libre: el ángulo debe registrarse mientras la rueda gira media vuelta o más</translation>
    </message>
    <message>
        <source>the spin-down is too short: give the wheel a good push and record until it stands</source>
        <translation>el giro libre es demasiado corto: dé un buen empujón a la rueda y registre hasta que se pare</translation>
    </message>
    <message>
        <source>parabola through the angle</source>
        <translation>parábola por el ángulo</translation>
    </message>
    <message>
        <source>'%1' is no torque unit; use N·m (Nm), lbf·ft (ft-lb), lbf·in (in-lb), kgf·m, kgf·cm or ozf·in</source>
        <translation>«%1» no es una unidad de par; use N·m (Nm), lbf·ft (ft-lb), lbf·in (in-lb), kgf·m, kgf·cm u ozf·in</translation>
    </message>
    <message>
        <source>new</source>
        <translation>nuevo</translation>
    </message>
    <message>
        <source>the transducer's accuracy not stated: assumed within ± %1 % of reading</source>
        <translation>exactitud del transductor no declarada: se supone dentro de ± %1 % de la lectura</translation>
    </message>
    <message>
        <source>lever at %1° ± 15°; over whole turns it averages to zero</source>
        <translation>palanca a %1° ± 15°; en vueltas completas se anula</translation>
    </message>
    <message>
        <source>%1 N·m and %2 N·m differ by a factor of %3: with the case held or a gear engaged the packs add up, with the other side held they are averaged; check which was held, and neutral</source>
        <translation>%1 N·m y %2 N·m difieren en un factor de %3: con la caja sujeta o una marcha puesta los paquetes se suman, con el otro lado sujeto se promedian; compruebe qué estaba sujeto, y el punto muerto</translation>
    </message>
    <message>
        <source>2 pulls: scatter not known from so few, a repeatability of %1 % is assumed</source>
        <translation>2 tirones: dispersión desconocida con tan pocos, se supone una repetibilidad del %1 %</translation>
    </message>
    <message>
        <source>median of %1 pulls, %2; pooled: a repeatability of %3 % is assumed</source>
        <translation>mediana de %1 tirones, %2; agrupada: se supone una repetibilidad del %3 %</translation>
    </message>
    <message>
        <source>the held wheel gave by %1° while the other turned by %2°: its tyre or strap slips; hold it better, speed and angle of the packs are less than they seem</source>
        <translation>la rueda sujeta cedió %1° mientras la otra giraba %2°: su neumático o su correa resbala; sujétela mejor, la velocidad y el ángulo de los paquetes son menores de lo que parecen</translation>
    </message>
    <message>
        <source>was never closed (the program or the computer stopped); what checks was recovered</source>
        <translation>no se cerró nunca (se paró el programa o el ordenador); se recuperó lo comprobable</translation>
    </message>
    <message>
        <source>was changed after it was closed: its hash does not match. Only rows whose own check holds are used</source>
        <translation>se cambió tras cerrarse: su hash no coincide. Solo se usan filas cuya propia comprobación es correcta</translation>
    </message>
    <message>
        <source>its closing line counts other samples than its batches</source>
        <translation>su línea de cierre cuenta otras muestras que sus bloques</translation>
    </message>
    <message>
        <source>its header was changed or damaged: unit, lever and all else it says are not certain</source>
        <translation>su cabecera se cambió o dañó: unidad, palanca y todo lo que dice no son seguros</translation>
    </message>
    <message>
        <source>line %1: %2 rows do not match their check and are excluded</source>
        <translation>línea %1: %2 filas no coinciden con su comprobación y quedan excluidas</translation>
    </message>
    <message>
        <source>%1 more batches do not match their checks and are excluded</source>
        <translation>%1 bloques más no coinciden con su comprobación y quedan excluidos</translation>
    </message>
    <message>
        <source>not one of its batches is whole: nothing in it can be used</source>
        <translation>ningún bloque está entero: nada se puede usar</translation>
    </message>
    <message>
        <source>its last %1 bytes are no whole batch and are excluded</source>
        <translation>sus últimos %1 bytes no forman un bloque y quedan excluidos</translation>
    </message>
    <message>
        <source>its header cannot be read (%1); it is taken as empty</source>
        <translation>su cabecera no se puede leer (%1); se toma como vacía</translation>
    </message>
    <message>
        <source>its header says %1, its torque column %2: the column is used</source>
        <translation>su cabecera dice %1, su columna de par %2: vale la columna</translation>
    </message>
    <message>
        <source>line %1, the last, is cut short: it is excluded</source>
        <translation>la línea %1, la última, está cortada: queda excluida</translation>
    </message>
    <message>
        <source>%1 rows that are no readings are excluded (first: %2)</source>
        <translation>%1 filas que no son lecturas quedan excluidas (primera: %2)</translation>
    </message>
    <message>
        <source>%1 changes its unit: all of it is given in %2</source>
        <translation>%1 cambia de unidad: todo se da en %2</translation>
    </message>
    <message>
        <source>%1 gives the torque its sign: clockwise is positive</source>
        <translation>%1 da el signo al par: horario es positivo</translation>
    </message>
    <message>
        <source>%1 is read as the time since the row before</source>
        <translation>%1 se lee como el tiempo desde la fila anterior</translation>
    </message>
    <message>
        <source>at %1 samples a second the usual frequency band from %2 Hz does not fit: choose one below %3 Hz, or record faster</source>
        <translation>con %1 muestras por segundo no cabe la banda de frecuencias usual desde %2 Hz: elija una por debajo de %3 Hz, o registre más rápido</translation>
    </message>
    <message>
        <source>shim</source>
        <translation>suplemento</translation>
    </message>
    <message>
        <source>friction disc</source>
        <translation>disco de fricción</translation>
    </message>
    <message>
        <source>steel plate</source>
        <translation>disco de acero</translation>
    </message>
    <message>
        <source>disc spring</source>
        <translation>muelle de disco</translation>
    </message>
    <message>
        <source>left: %1</source>
        <translation>izquierda: %1</translation>
    </message>
    <message>
        <source>right: %1</source>
        <translation>derecha: %1</translation>
    </message>
    <message>
        <source>stack: %1</source>
        <translation>grosor del paquete: %1</translation>
    </message>
    <message>
        <source>shims: %1</source>
        <translation>suplementos: %1</translation>
    </message>
    <message>
        <source>end play: %1</source>
        <translation>juego axial: %1</translation>
    </message>
    <message>
        <source>friction surfaces: %1</source>
        <translation>superficies de fricción: %1</translation>
    </message>
    <message>
        <source>stack %1</source>
        <translation>grosor %1</translation>
    </message>
    <message>
        <source>end play %1</source>
        <translation>juego axial %1</translation>
    </message>
    <message>
        <source>%1 friction discs</source>
        <translation>%1 discos de fricción</translation>
    </message>
    <message>
        <source>%1 friction disc</source>
        <translation>%1 disco de fricción</translation>
    </message>
    <message>
        <source>%1 steel plates</source>
        <translation>%1 discos de acero</translation>
    </message>
    <message>
        <source>%1 steel plate</source>
        <translation>%1 disco de acero</translation>
    </message>
    <message>
        <source>%1 disc springs</source>
        <translation>%1 muelles de disco</translation>
    </message>
    <message>
        <source>%1 disc spring</source>
        <translation>%1 muelle de disco</translation>
    </message>
    <message>
        <source>%1 shims</source>
        <translation>%1 suplementos</translation>
    </message>
    <message>
        <source>%1 shim</source>
        <translation>%1 suplemento</translation>
    </message>
    <message>
        <source>%1 friction surfaces</source>
        <translation>%1 superficies de fricción</translation>
    </message>
    <message>
        <source>%1 friction surface</source>
        <translation>%1 superficie de fricción</translation>
    </message>
    <message>
        <source>shim at %1: %2</source>
        <translation>suplemento en %1: %2</translation>
    </message>
    <message>
        <source>friction disc at %1: %2</source>
        <translation>disco de fricción en %1: %2</translation>
    </message>
    <message>
        <source>steel plate at %1: %2</source>
        <translation>disco de acero en %1: %2</translation>
    </message>
    <message>
        <source>disc spring at %1: %2</source>
        <translation>muelle de disco en %1: %2</translation>
    </message>
    <message>
        <source>%1 taken out (%2)</source>
        <translation>%1 quitado (%2)</translation>
    </message>
    <message>
        <source>%1 put in (%2)</source>
        <translation>%1 puesto (%2)</translation>
    </message>
    <message>
        <source>left and right stack differ by %1 mm; some manuals match within %2</source>
        <translation>el grosor izquierdo y el derecho difieren en %1 mm; algunos manuales piden %2</translation>
    </message>
    <message>
        <source>%1 % of the fill</source>
        <translation>%1 % del llenado</translation>
    </message>
    <message>
        <source>thickness not stated</source>
        <translation>grosor sin indicar</translation>
    </message>
    <message>
        <source>soaked %1 min in %2</source>
        <translation>empapado %1 min en %2</translation>
    </message>
    <message>
        <source>spring load: %1</source>
        <translation>carga del muelle: %1</translation>
    </message>
    <message>
        <source>outer diameter of the faces: %1</source>
        <translation>diámetro exterior de las caras: %1</translation>
    </message>
    <message>
        <source>inner diameter of the faces: %1</source>
        <translation>diámetro interior de las caras: %1</translation>
    </message>
    <message>
        <source>preload torque at the pinion: %1</source>
        <translation>par de precarga en el piñón: %1</translation>
    </message>
    <message>
        <source>soak: %1</source>
        <translation>empapado: %1</translation>
    </message>
    <message>
        <source>amount of oil: %1</source>
        <translation>cantidad de aceite: %1</translation>
    </message>
    <message>
        <source>spring: %1</source>
        <translation>muelle: %1</translation>
    </message>
    <message>
        <source>soaked in: %1</source>
        <translation>empapado en: %1</translation>
    </message>
    <message>
        <source>oil: %1</source>
        <translation>aceite: %1</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>modifier: %1</source>
        <translation>modificador: %1</translation>
    </message>
    <message>
        <source>amount of modifier: %1</source>
        <translation>cantidad de modificador: %1</translation>
    </message>
    <message>
        <source>modifier, share of the fill: %1</source>
        <translation>modificador, parte del llenado: %1</translation>
    </message>
    <message>
        <source>Build in the axle</source>
        <translation>Montaje en el eje</translation>
    </message>
    <message>
        <source>Built:</source>
        <translation>Montado:</translation>
    </message>
    <message>
        <source>Each pack:</source>
        <translation>Cada paquete:</translation>
    </message>
    <message>
        <source>Left pack:</source>
        <translation>Paquete izquierdo:</translation>
    </message>
    <message>
        <source>Right pack:</source>
        <translation>Paquete derecho:</translation>
    </message>
    <message>
        <source>Preload:</source>
        <translation>Precarga:</translation>
    </message>
    <message>
        <source>Faces:</source>
        <translation>Caras:</translation>
    </message>
    <message>
        <source>Filled:</source>
        <translation>Llenado:</translation>
    </message>
    <message>
        <source>Soaked:</source>
        <translation>Impregnado:</translation>
    </message>
    <message>
        <source>Friction:</source>
        <translation>Fricción:</translation>
    </message>
    <message>
        <source>%1 N on each pack</source>
        <translation>%1 N en cada paquete</translation>
    </message>
    <message>
        <source>pinion %1</source>
        <translation>piñón %1</translation>
    </message>
    <message>
        <source>nothing that is stated of both</source>
        <translation>nada que conste de ambos</translation>
    </message>
    <message>
        <source>each pack: %1</source>
        <translation>cada paquete: %1</translation>
    </message>
    <message>
        <source>pack mean, drag taken off</source>
        <translation>media de paquetes, arrastre descontado</translation>
    </message>
    <message>
        <source>build sheet: of the entries used</source>
        <translation>hoja de montaje: de las entradas usadas</translation>
    </message>
    <message>
        <source>second test</source>
        <translation>segundo ensayo</translation>
    </message>
    <message>
        <source>Second test: %1</source>
        <translation>Segundo ensayo: %1</translation>
    </message>
    <message>
        <source>agrees</source>
        <translation>concuerda</translation>
    </message>
    <message>
        <source>does not agree</source>
        <translation>no concuerda</translation>
    </message>
    <message>
        <source>first</source>
        <translation>primero</translation>
    </message>
    <message>
        <source>second</source>
        <translation>segundo</translation>
    </message>
    <message>
        <source>second − first</source>
        <translation>segundo − primero</translation>
    </message>
    <message>
        <source>First:</source>
        <translation>Primero:</translation>
    </message>
    <message>
        <source>Second:</source>
        <translation>Segundo:</translation>
    </message>
    <message>
        <source>Mind:</source>
        <translation>Atención:</translation>
    </message>
    <message>
        <source>operator not stated</source>
        <translation>operario sin indicar</translation>
    </message>
    <message>
        <source>transducer not stated</source>
        <translation>transductor sin indicar</translation>
    </message>
    <message>
        <source>Agrees: |E_n| ≤ 1, by √(U₁² + U₂²) (ISO 13528); what both share counts twice.</source>
        <translation>Concuerda: |E_n| ≤ 1, con √(U₁² + U₂²) (ISO 13528); lo que ambos comparten cuenta dos veces.</translation>
    </message>
    <message>
        <source>Not compared by the program before the second was signed.</source>
        <translation>No comparado por el programa antes de firmarse el segundo.</translation>
    </message>
    <message>
        <source>the operator is not stated in both</source>
        <translation>el operario no consta en ambos</translation>
    </message>
    <message>
        <source>the transducer is not stated in both</source>
        <translation>el transductor no consta en ambos</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 más</translation>
    </message>
    <message>
        <source>Changed since %1:</source>
        <translation>Cambios desde %1:</translation>
    </message>
    <message>
        <source>cannot be told</source>
        <translation>no se puede decir</translation>
    </message>
    <message>
        <source>as read, drag included: the figure is too high by the drag's share</source>
        <translation>como se leyó, con arrastre: la cifra es demasiado alta en su parte</translation>
    </message>
    <message>
        <source>Built</source>
        <translation>Montado</translation>
    </message>
    <message>
        <source>Each pack</source>
        <translation>Cada paquete</translation>
    </message>
    <message>
        <source>each pack</source>
        <translation>cada paquete</translation>
    </message>
    <message>
        <source>Left pack</source>
        <translation>Paquete izquierdo</translation>
    </message>
    <message>
        <source>Right pack</source>
        <translation>Paquete derecho</translation>
    </message>
    <message>
        <source>Changed since %1</source>
        <translation>Cambiado desde %1</translation>
    </message>
    <message>
        <source>Faces</source>
        <translation>Caras de fricción</translation>
    </message>
    <message>
        <source>Filled</source>
        <translation>Llenado</translation>
    </message>
    <message>
        <source>Soaked</source>
        <translation>En remojo</translation>
    </message>
    <message>
        <source>Friction</source>
        <translation>Fricción</translation>
    </message>
    <message>
        <source>Preload</source>
        <translation>Precarga</translation>
    </message>
    <message>
        <source>gear</source>
        <translation>marcha</translation>
    </message>
    <message>
        <source>Mind</source>
        <translation>Atención</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Primera</translation>
    </message>
    <message>
        <source>Second</source>
        <translation>Segunda</translation>
    </message>
    <message>
        <source>Second test</source>
        <translation>Segunda prueba</translation>
    </message>
    <message>
        <source>its two entries</source>
        <translation>sus dos entradas</translation>
    </message>
    <message>
        <source>its entry</source>
        <translation>su entrada</translation>
    </message>
    <message>
        <source>%1 is not stated in both</source>
        <translation>%1 no está indicado en ambas</translation>
    </message>
    <message>
        <source>%1: is the sheet of axle %2; the recording is of %3</source>
        <translation>%1: es la hoja del eje %2; el registro es de %3</translation>
    </message>
    <message>
        <source>%1: holds no build from before the recording</source>
        <translation>%1: no contiene ningún montaje anterior al registro</translation>
    </message>
    <message>
        <source>%1 is not signed yet: sign it first, then both tests are shown</source>
        <translation>%1 aún no está firmado: fírmelo primero; después se muestran ambas pruebas</translation>
    </message>
    <message>
        <source>a second test confirms one recording, not a ratio of two</source>
        <translation>una segunda prueba confirma un registro, no una relación de dos</translation>
    </message>
    <message>
        <source>a second test stands on the engineer's page (--kind engineer)</source>
        <translation>una segunda prueba figura en la página del técnico (--kind engineer)</translation>
    </message>
    <message>
        <source>one operator with one transducer made both: that is a repeat, no second opinion</source>
        <translation>un operario hizo ambas con un transductor: eso es una repetición, no una segunda prueba</translation>
    </message>
    <message>
        <source>%1 is %2 itself: a confirmation is a test of its own</source>
        <translation>%1 es el propio %2: una confirmación es una prueba aparte</translation>
    </message>
    <message>
        <source>these are not two tests of one thing: %1</source>
        <translation>no son dos pruebas de una misma cosa: %1</translation>
    </message>
</context>
</TS>
