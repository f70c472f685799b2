<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>Heldwheel</name>
    <message>
        <source>Everything is saved in %1.</source>
        <translation>Todo está guardado en %1.</translation>
    </message>
    <message>
        <source>Test</source>
        <translation>Ensayo</translation>
    </message>
    <message>
        <source>Review</source>
        <translation>Revisar</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Comparar</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Unidad</translation>
    </message>
    <message>
        <source>SIMULATED</source>
        <translation>SIMULADO</translation>
    </message>
    <message>
        <source>What this page shows was made by the virtual transducer: never file it as a test</source>
        <translation>Lo que muestra esta página procede del transductor virtual: nunca lo archive como ensayo</translation>
    </message>
    <message>
        <source>View</source>
        <translation>Vista</translation>
    </message>
    <message>
        <source>Colours, text size, decimal mark, sounds, what appears on reports</source>
        <translation>Colores, tamaño del texto, signo decimal, sonidos, lo que aparece en los informes</translation>
    </message>
    <message>
        <source>Light or dark</source>
        <translation>Claro u oscuro</translation>
    </message>
    <message>
        <source>Decimal comma</source>
        <translation>Coma decimal</translation>
    </message>
    <message>
        <source>Sounds</source>
        <translation>Sonidos</translation>
    </message>
    <message>
        <source>On every report …</source>
        <translation>En cada informe …</translation>
    </message>
    <message>
        <source>How to make the test (F1)</source>
        <translation>Cómo hacer el ensayo (F1)</translation>
    </message>
    <message>
        <source>Ctrl+%1</source>
        <translation>Ctrl+%1</translation>
    </message>
    <message>
        <source>Text %1 %</source>
        <translation>Texto %1 %</translation>
    </message>
    <message>
        <source>Done: next check</source>
        <translation>Hecho: siguiente punto</translation>
    </message>
    <message>
        <source>Done: last check</source>
        <translation>Hecho: último punto</translation>
    </message>
    <message>
        <source>Taking the zero</source>
        <translation>Tomando el cero</translation>
    </message>
    <message>
        <source>Hands off: nothing may touch the lever</source>
        <translation>Manos fuera: nada debe tocar la palanca</translation>
    </message>
    <message>
        <source>Turn slowly</source>
        <translation>Gire despacio</translation>
    </message>
    <message>
        <source>It is caught by itself; without it: Without drag</source>
        <translation>Se capta solo; sin él: Sin arrastre</translation>
    </message>
    <message>
        <source>Pull %1 of %2</source>
        <translation>Tirón %1 de %2</translation>
    </message>
    <message>
        <source>Pulls are caught by themselves: just pull</source>
        <translation>Los tirones se captan solos: simplemente tire</translation>
    </message>
    <message>
        <source>Sign and finish</source>
        <translation>Firmar y terminar</translation>
    </message>
    <message>
        <source>Enter who did the test</source>
        <translation>Indique quién hizo el ensayo</translation>
    </message>
    <message>
        <source>Next test</source>
        <translation>Siguiente ensayo</translation>
    </message>
    <message>
        <source>Start the test</source>
        <translation>Empezar el ensayo</translation>
    </message>
    <message>
        <source>Still missing: %1</source>
        <translation>Falta todavía: %1</translation>
    </message>
    <message>
        <source>Connect again</source>
        <translation>Conectar de nuevo</translation>
    </message>
    <message>
        <source>Waiting for the transducer</source>
        <translation>Esperando al transductor</translation>
    </message>
    <message>
        <source>Transducer: %1</source>
        <translation>Transductor: %1</translation>
    </message>
    <message>
        <source>I have read them: go on</source>
        <translation>Los he leído: seguir</translation>
    </message>
    <message>
        <source>All checked: go on</source>
        <translation>Todo comprobado: seguir</translation>
    </message>
    <message>
        <source>Take the zero</source>
        <translation>Tomar el cero</translation>
    </message>
    <message>
        <source>Drag is measured: go on</source>
        <translation>Arrastre medido: seguir</translation>
    </message>
    <message>
        <source>Enough pulls: zero again</source>
        <translation>Tirones suficientes: cero otra vez</translation>
    </message>
    <message>
        <source>Finish this pull</source>
        <translation>Termine este tirón</translation>
    </message>
    <message>
        <source>The lever is loaded</source>
        <translation>La palanca está cargada</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Cuándo</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>one row per recording</source>
        <translation>una fila por registro</translation>
    </message>
    <message>
        <source>one row per pull</source>
        <translation>una fila por tirón</translation>
    </message>
    <message>
        <source>Load smoothly until it slips</source>
        <translation>Cargue con suavidad hasta que deslice</translation>
    </message>
    <message>
        <source>STOP: transducer's rated torque reached</source>
        <translation>ALTO: par nominal del transductor alcanzado</translation>
    </message>
    <message>
        <source>Ease off: near the transducer's rated torque</source>
        <translation>Afloje: cerca del par nominal del transductor</translation>
    </message>
    <message>
        <source>Load more slowly</source>
        <translation>Cargue más despacio</translation>
    </message>
    <message>
        <source>Keep turning</source>
        <translation>Siga girando</translation>
    </message>
    <message>
        <source>Keep turning only if the wheel moves; otherwise stop</source>
        <translation>Siga girando solo si la rueda se mueve; si no, pare</translation>
    </message>
    <message>
        <source>Nothing turns: ease the load off, keep hold</source>
        <translation>Nada gira: retire la carga, no suelte la palanca</translation>
    </message>
    <message>
        <source>Let it rest</source>
        <translation>Déjelo reposar</translation>
    </message>
    <message>
        <source>Ready: pull when you like</source>
        <translation>Listo: tire cuando quiera</translation>
    </message>
    <message>
        <source>Enough: ease the load off, keep hold of the lever</source>
        <translation>Basta: retire la carga despacio, no suelte la palanca</translation>
    </message>
    <message>
        <source>Differences</source>
        <translation>Diferencias</translation>
    </message>
    <message>
        <source>Groups</source>
        <translation>Grupos</translation>
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
        <source>Stud circle</source>
        <translation>Círculo de espárragos</translation>
    </message>
    <message>
        <source>Stud-to-stud distance</source>
        <translation>Distancia entre espárragos</translation>
    </message>
    <message>
        <source>67.2 mm or 2 5/8 in</source>
        <translation>67,2 mm o 2 5/8 in</translation>
    </message>
    <message>
        <source>Lever, drive to hand</source>
        <translation>Palanca, del cuadrado a la mano</translation>
    </message>
    <message>
        <source>Lever angle from stud line</source>
        <translation>Ángulo de la palanca con la línea del espárrago</translation>
    </message>
    <message>
        <source>0° = in line</source>
        <translation>0° = en línea</translation>
    </message>
    <message>
        <source>Drive off the wheel's centre</source>
        <translation>Cuadrado fuera del centro de la rueda</translation>
    </message>
    <message>
        <source>Radius of the force</source>
        <translation>Radio de la fuerza</translation>
    </message>
    <message>
        <source>Cord diameter</source>
        <translation>Diámetro de la cuerda</translation>
    </message>
    <message>
        <source>Pull, degrees off square</source>
        <translation>Tirón, grados fuera de escuadra</translation>
    </message>
    <message>
        <source>Lever above level at the start</source>
        <translation>Palanca sobre la horizontal al inicio</translation>
    </message>
    <message>
        <source>Weight of the lever</source>
        <translation>Peso de la palanca</translation>
    </message>
    <message>
        <source>1.2 kg, if known</source>
        <translation>1,2 kg, si se conoce</translation>
    </message>
    <message>
        <source>Its centre of mass from the drive</source>
        <translation>Su centro de masa desde el cuadrado</translation>
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
        <source>Safety checks</source>
        <translation>Seguridad</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Cero</translation>
    </message>
    <message>
        <source>Drag</source>
        <translation>Arrastre</translation>
    </message>
    <message>
        <source>Hold the wheel</source>
        <translation>Sujetar la rueda</translation>
    </message>
    <message>
        <source>Pulls</source>
        <translation>Tirones</translation>
    </message>
    <message>
        <source>Zero again</source>
        <translation>Cero otra vez</translation>
    </message>
    <message>
        <source>Sign</source>
        <translation>Firmar</translation>
    </message>
    <message>
        <source>to come</source>
        <translation>pendiente</translation>
    </message>
    <message>
        <source>A4, 210 × 297 mm</source>
        <translation>A4, 210 × 297 mm</translation>
    </message>
    <message>
        <source>Letter, 8.5 × 11 inches</source>
        <translation>Carta, 8,5 × 11 pulgadas</translation>
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
        <source>Breakaway</source>
        <translation>Par de arranque</translation>
    </message>
    <message>
        <source>Rotating mean</source>
        <translation>Par de giro medio</translation>
    </message>
    <message>
        <source>Rotating maximum</source>
        <translation>Par de giro máximo</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>otro lado</translation>
    </message>
    <message>
        <source>Other wheel held</source>
        <translation>Otra rueda sujeta</translation>
    </message>
    <message>
        <source>Case held</source>
        <translation>Caja sujeta</translation>
    </message>
    <message>
        <source>Both wheels free</source>
        <translation>Ambas ruedas libres</translation>
    </message>
    <message>
        <source>held side</source>
        <translation>lado sujeto</translation>
    </message>
    <message>
        <source>Lever on one stud</source>
        <translation>Palanca en un espárrago</translation>
    </message>
    <message>
        <source>Cross-bar over two studs</source>
        <translation>Travesaño sobre dos espárragos</translation>
    </message>
    <message>
        <source>Lever at the hub's centre</source>
        <translation>Palanca en el centro del cubo</translation>
    </message>
    <message>
        <source>T-bar, pushed at both ends</source>
        <translation>Barra en T, empujada por ambos extremos</translation>
    </message>
    <message>
        <source>Force at a radius</source>
        <translation>Fuerza en un radio</translation>
    </message>
    <message>
        <source>Cord wound on a drum</source>
        <translation>Cuerda en un tambor</translation>
    </message>
    <message>
        <source>Transducer in line with the axle</source>
        <translation>Transductor en línea con el eje</translation>
    </message>
    <message>
        <source>Weight hung on a lever</source>
        <translation>Peso colgado de una palanca</translation>
    </message>
    <message>
        <source>Transducer on the held side</source>
        <translation>Transductor en el lado sujeto</translation>
    </message>
    <message>
        <source>+ is clockwise</source>
        <translation>+ es horario</translation>
    </message>
    <message>
        <source>− is clockwise</source>
        <translation>− es horario</translation>
    </message>
    <message>
        <source>It shows no sign</source>
        <translation>No muestra signo</translation>
    </message>
    <message>
        <source>both ways</source>
        <translation>ambos sentidos</translation>
    </message>
    <message>
        <source>which number is the torque</source>
        <translation>qué número es el par</translation>
    </message>
    <message>
        <source>what one count is worth</source>
        <translation>cuánto vale una cuenta</translation>
    </message>
    <message>
        <source>what the comma means</source>
        <translation>qué significa la coma</translation>
    </message>
    <message>
        <source>what sets thousands apart</source>
        <translation>qué separa los millares</translation>
    </message>
    <message>
        <source>how the lines of the torque begin</source>
        <translation>cómo empiezan las líneas del par</translation>
    </message>
    <message>
        <source>the layout of a line</source>
        <translation>la forma de una línea</translation>
    </message>
    <message>
        <source>which characteristic it is</source>
        <translation>qué característica es</translation>
    </message>
    <message>
        <source>nothing, but load it the other way as well</source>
        <translation>nada, pero cárguelo también al revés</translation>
    </message>
    <message>
        <source>Curve</source>
        <translation>Curva</translation>
    </message>
    <message>
        <source>Figure</source>
        <translation>Cifra</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>En orden</translation>
    </message>
    <message>
        <source>Jobs</source>
        <translation>Trabajos</translation>
    </message>
    <message>
        <source>Components</source>
        <translation>Componentes</translation>
    </message>
    <message>
        <source>Scatter</source>
        <translation>Dispersión</translation>
    </message>
    <message>
        <source>SD, %1</source>
        <translation>Desviación típica, %1</translation>
    </message>
    <message>
        <source>Share of variance</source>
        <translation>Parte de la varianza</translation>
    </message>
    <message>
        <source>Meaning</source>
        <translation>Significado</translation>
    </message>
    <message>
        <source>Variance</source>
        <translation>Varianza</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Lecturas</translation>
    </message>
    <message>
        <source>Axle</source>
        <translation>Eje</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>Operario</translation>
    </message>
    <message>
        <source>Repeats</source>
        <translation>Repeticiones</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Media</translation>
    </message>
    <message>
        <source>Figures</source>
        <translation>Cifras</translation>
    </message>
    <message>
        <source>Interval</source>
        <translation>Intervalo</translation>
    </message>
    <message>
        <source>Pairs</source>
        <translation>Parejas</translation>
    </message>
    <message>
        <source>Difference</source>
        <translation>Diferencia</translation>
    </message>
    <message>
        <source>half width</source>
        <translation>semiancho</translation>
    </message>
    <message>
        <source>Show a difference</source>
        <translation>Mostrar una diferencia</translation>
    </message>
    <message>
        <source>Show that nothing changed</source>
        <translation>Mostrar que nada cambió</translation>
    </message>
    <message>
        <source>Know a mean</source>
        <translation>Conocer una media</translation>
    </message>
    <message>
        <source>Order of tests</source>
        <translation>Orden de los ensayos</translation>
    </message>
    <message>
        <source>Block (a day)</source>
        <translation>Bloque (un día)</translation>
    </message>
    <message>
        <source>Fill to test</source>
        <translation>Llenado a ensayar</translation>
    </message>
    <message>
        <source>Virtual transducer</source>
        <translation>Transductor virtual</translation>
    </message>
    <message>
        <source>in gear</source>
        <translation>con marcha puesta</translation>
    </message>
    <message>
        <source>in neutral</source>
        <translation>en punto muerto</translation>
    </message>
    <message>
        <source>%1%2. Pulls are recorded, but no result is given: put the type right on the Axle card, or a reason to judge it all the same.</source>
        <translation>%1%2. Los tirones se registran, pero no se da resultado: corrija el tipo en la ficha del eje, o dé una razón para juzgarlo de todos modos.</translation>
    </message>
    <message>
        <source>The kind of test has changed, so some checks are asked again. Pulls made before stay in the list: exclude those that were made otherwise.</source>
        <translation>El tipo de ensayo ha cambiado, por eso se preguntan de nuevo algunas comprobaciones. Los tirones anteriores quedan en la lista: excluya los hechos de otro modo.</translation>
    </message>
    <message>
        <source>The zero has moved since the start. The pulls are kept, but their result may be off by as much: warm the transducer up, take a new zero and repeat.</source>
        <translation>El cero se ha movido desde el inicio. Los tirones se conservan, pero su resultado puede errar en esa cantidad: caliente el transductor, tome un cero nuevo y repita.</translation>
    </message>
    <message>
        <source>Vehicle</source>
        <translation>Vehículo</translation>
    </message>
    <message>
        <source>blue hill-climb car</source>
        <translation>coche azul de montaña</translation>
    </message>
    <message>
        <source>Odometer</source>
        <translation>Cuentakilómetros</translation>
    </message>
    <message>
        <source>as read, 53,214 miles</source>
        <translation>como se lee, 53.214 millas</translation>
    </message>
    <message>
        <source>Job number</source>
        <translation>Número de trabajo</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Cliente</translation>
    </message>
    <message>
        <source>Tested by</source>
        <translation>Ensayado por</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Temperatura del aceite</translation>
    </message>
    <message>
        <source>Oil</source>
        <translation>Aceite</translation>
    </message>
    <message>
        <source>Friction modifier</source>
        <translation>Modificador de fricción</translation>
    </message>
    <message>
        <source>kind and amount</source>
        <translation>tipo y cantidad</translation>
    </message>
    <message>
        <source>Complaint, remarks</source>
        <translation>Queja, observaciones</translation>
    </message>
    <message>
        <source>chatters in slow turns</source>
        <translation>vibra en giros lentos</translation>
    </message>
    <message>
        <source>Dates, place and people</source>
        <translation>Fechas, lugar y personas</translation>
    </message>
    <message>
        <source>How it was held and turned</source>
        <translation>Cómo se sujetó y giró</translation>
    </message>
    <message>
        <source>Oil in detail</source>
        <translation>Aceite en detalle</translation>
    </message>
    <message>
        <source>The axle's history</source>
        <translation>Historia del eje</translation>
    </message>
    <message>
        <source>Received on</source>
        <translation>Recibido el</translation>
    </message>
    <message>
        <source>Workshop</source>
        <translation>Taller</translation>
    </message>
    <message>
        <source>as on the report</source>
        <translation>como en el informe</translation>
    </message>
    <message>
        <source>Done at</source>
        <translation>Hecho en</translation>
    </message>
    <message>
        <source>if not in the workshop</source>
        <translation>si no fue en el taller</translation>
    </message>
    <message>
        <source>Witness</source>
        <translation>Testigo</translation>
    </message>
    <message>
        <source>Held by</source>
        <translation>Sujeta con</translation>
    </message>
    <message>
        <source>strap to the floor</source>
        <translation>cincha al suelo</translation>
    </message>
    <message>
        <source>Car stands on</source>
        <translation>El coche está sobre</translation>
    </message>
    <message>
        <source>two stands under the axle</source>
        <translation>dos caballetes bajo el eje</translation>
    </message>
    <message>
        <source>Tyre</source>
        <translation>Neumático</translation>
    </message>
    <message>
        <source>size, pressure, circumference</source>
        <translation>medida, presión, circunferencia</translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation>Rueda</translation>
    </message>
    <message>
        <source>Fitted</source>
        <translation>Montado</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Quitado</translation>
    </message>
    <message>
        <source>Brakes</source>
        <translation>Frenos</translation>
    </message>
    <message>
        <source>Free</source>
        <translation>Libres</translation>
    </message>
    <message>
        <source>Not free</source>
        <translation>No libres</translation>
    </message>
    <message>
        <source>Brake pads</source>
        <translation>Pastillas</translation>
    </message>
    <message>
        <source>Out</source>
        <translation>Fuera</translation>
    </message>
    <message>
        <source>Parking brake</source>
        <translation>Freno de estacionamiento</translation>
    </message>
    <message>
        <source>Propshaft</source>
        <translation>Árbol de transmisión</translation>
    </message>
    <message>
        <source>Turned before the pulls</source>
        <translation>Girado antes de los tirones</translation>
    </message>
    <message>
        <source>Speed, turns a minute</source>
        <translation>Velocidad, vueltas por minuto</translation>
    </message>
    <message>
        <source>Deviations from plan</source>
        <translation>Desviaciones del plan</translation>
    </message>
    <message>
        <source>one side only</source>
        <translation>solo un lado</translation>
    </message>
    <message>
        <source>Amount</source>
        <translation>Cantidad</translation>
    </message>
    <message>
        <source>Age</source>
        <translation>Edad</translation>
    </message>
    <message>
        <source>6 months</source>
        <translation>6 meses</translation>
    </message>
    <message>
        <source>Appearance</source>
        <translation>Aspecto</translation>
    </message>
    <message>
        <source>clear, no glitter</source>
        <translation>limpio, sin brillos</translation>
    </message>
    <message>
        <source>Temperature taken</source>
        <translation>Temperatura tomada</translation>
    </message>
    <message>
        <source>at the drain plug</source>
        <translation>en el tapón de vaciado</translation>
    </message>
    <message>
        <source>Modifier, % of the fill</source>
        <translation>Modificador, % del llenado</translation>
    </message>
    <message>
        <source>As received</source>
        <translation>Estado al recibir</translation>
    </message>
    <message>
        <source>dry, no leaks</source>
        <translation>seco, sin fugas</translation>
    </message>
    <message>
        <source>Last service</source>
        <translation>Último servicio</translation>
    </message>
    <message>
        <source>2025-11, oil</source>
        <translation>2025-11, aceite</translation>
    </message>
    <message>
        <source>Friction material</source>
        <translation>Material de fricción</translation>
    </message>
    <message>
        <source>Teeth counted</source>
        <translation>Dientes contados</translation>
    </message>
    <message>
        <source>Not stated</source>
        <translation>Sin indicar</translation>
    </message>
    <message>
        <source>On</source>
        <translation>Puesto</translation>
    </message>
    <message>
        <source>Rotating</source>
        <translation>Giro</translation>
    </message>
    <message>
        <source>Breakaway ÷ rotating</source>
        <translation>Arranque ÷ giro</translation>
    </message>
    <message>
        <source>Chatter index</source>
        <translation>Índice de vibración</translation>
    </message>
    <message>
        <source>Torque-speed slope</source>
        <translation>Pendiente par-velocidad</translation>
    </message>
    <message>
        <source>Excluded (%1)</source>
        <translation>Excluidos (%1)</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Cuál</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>Notes (%1)</source>
        <translation>Notas (%1)</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>not connected</source>
        <translation>sin conexión</translation>
    </message>
    <message>
        <source>95 % interval</source>
        <translation>intervalo del 95 %</translation>
    </message>
    <message>
        <source>From</source>
        <translation>De</translation>
    </message>
    <message>
        <source>Fills</source>
        <translation>Llenados</translation>
    </message>
    <message>
        <source>Fill</source>
        <translation>Llenado</translation>
    </message>
    <message>
        <source>Off the line</source>
        <translation>Fuera de la recta</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Registros</translation>
    </message>
    <message>
        <source>to half a turn</source>
        <translation>a media vuelta</translation>
    </message>
    <message>
        <source>to a quarter of a turn</source>
        <translation>a un cuarto de vuelta</translation>
    </message>
    <message>
        <source>to an eighth of a turn</source>
        <translation>a un octavo de vuelta</translation>
    </message>
    <message>
        <source>to a sixteenth of a turn</source>
        <translation>a un dieciseisavo de vuelta</translation>
    </message>
    <message>
        <source>brought back to their marks</source>
        <translation>devueltas a sus marcas</translation>
    </message>
    <message>
        <source>Clockwise, seen from outside</source>
        <translation>Horario, visto desde fuera</translation>
    </message>
    <message>
        <source>Anticlockwise</source>
        <translation>Antihorario</translation>
    </message>
    <message>
        <source>It reads within what is allowed, at every load.</source>
        <translation>Lee dentro de lo permitido en cada carga.</translation>
    </message>
    <message>
        <source>It reads further off than is allowed. Do not judge by it until it has been calibrated.</source>
        <translation>Lee más desviado de lo permitido. No juzgue con él hasta calibrarlo.</translation>
    </message>
    <message>
        <source>The interval straddles what is allowed: better known weights, arm or place may settle it.</source>
        <translation>El intervalo cruza lo permitido: pesos, brazo o lugar mejor conocidos pueden decidirlo.</translation>
    </message>
    <message>
        <source>Its accuracy is not known, so nothing says what is allowed. The differences stand.</source>
        <translation>No se conoce su exactitud, así que nada dice lo permitido. Las diferencias valen.</translation>
    </message>
    <message>
        <source>Trend</source>
        <translation>Tendencia</translation>
    </message>
    <message>
        <source>Run-in</source>
        <translation>Rodaje</translation>
    </message>
    <message>
        <source>Over time</source>
        <translation>En el tiempo</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>Our repeatability</source>
        <translation>Nuestra repetibilidad</translation>
    </message>
    <message>
        <source>Working …</source>
        <translation>Calculando …</translation>
    </message>
    <message>
        <source>Warnings (%1)</source>
        <translation>Avisos (%1)</translation>
    </message>
    <message>
        <source>Warning</source>
        <translation>Aviso</translation>
    </message>
    <message>
        <source>Groups by</source>
        <translation>Grupos por</translation>
    </message>
    <message>
        <source>Compared with</source>
        <translation>Comparado con</translation>
    </message>
    <message>
        <source>Within blocks of (day, car)</source>
        <translation>Dentro de bloques (día, coche)</translation>
    </message>
    <message>
        <source>No-change margin ±</source>
        <translation>Margen sin cambio ±</translation>
    </message>
    <message>
        <source>Reason for comparing unlike tests</source>
        <translation>Razón para comparar ensayos distintos</translation>
    </message>
    <message>
        <source>why this is sound</source>
        <translation>por qué es válido</translation>
    </message>
    <message>
        <source>Compare anyway</source>
        <translation>Comparar igualmente</translation>
    </message>
    <message>
        <source>▲ These groups cannot be compared: </source>
        <translation>▲ Estos grupos no se pueden comparar: </translation>
    </message>
    <message>
        <source>Axles are told apart by</source>
        <translation>Los ejes se distinguen por</translation>
    </message>
    <message>
        <source>Counted by</source>
        <translation>Contado por</translation>
    </message>
    <message>
        <source>Good jobs at the start</source>
        <translation>Trabajos buenos al inicio</translation>
    </message>
    <message>
        <source>Operators, axles, repeats</source>
        <translation>Operarios, ejes, repeticiones</translation>
    </message>
    <message>
        <source>Two ways side by side</source>
        <translation>Dos maneras lado a lado</translation>
    </message>
    <message>
        <source>Study</source>
        <translation>Estudio</translation>
    </message>
    <message>
        <source>Operators (or the two ways) by</source>
        <translation>Operarios (o las dos maneras) por</translation>
    </message>
    <message>
        <source>Axles by</source>
        <translation>Ejes por</translation>
    </message>
    <message>
        <source>A fill (drain, flush, fill, run in) is the unit; take its pulls together first.</source>
        <translation>Un llenado (vaciar, lavar, llenar, rodar) es la unidad; junte primero sus tirones.</translation>
    </message>
    <message>
        <source>What for</source>
        <translation>Para qué</translation>
    </message>
    <message>
        <source>Scatter from fill to fill</source>
        <translation>Dispersión de llenado a llenado</translation>
    </message>
    <message>
        <source>typed below</source>
        <translation>escrita abajo</translation>
    </message>
    <message>
        <source>Standard deviation</source>
        <translation>Desviación típica</translation>
    </message>
    <message>
        <source>Shown how surely (power)</source>
        <translation>Con qué seguridad (potencia)</translation>
    </message>
    <message>
        <source>Groups, the control first</source>
        <translation>Grupos, el control primero</translation>
    </message>
    <message>
        <source>reference, oil B</source>
        <translation>referencia, aceite B</translation>
    </message>
    <message>
        <source>Seed of the order</source>
        <translation>Semilla del orden</translation>
    </message>
    <message>
        <source>chosen for you</source>
        <translation>elegida por usted</translation>
    </message>
    <message>
        <source>Draw another order</source>
        <translation>Sortear otro orden</translation>
    </message>
    <message>
        <source>Difference that must not be missed</source>
        <translation>Diferencia que no debe pasar inadvertida</translation>
    </message>
    <message>
        <source>Mean known within ±</source>
        <translation>Media conocida a ±</translation>
    </message>
    <message>
        <source>Against</source>
        <translation>Frente a</translation>
    </message>
    <message>
        <source>Which value of it gives</source>
        <translation>Qué valor da</translation>
    </message>
    <message>
        <source>What to expect at</source>
        <translation>Qué esperar en</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Todos</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Práctica</translation>
    </message>
    <message>
        <source>Imported</source>
        <translation>Importado</translation>
    </message>
    <message>
        <source>Recovered</source>
        <translation>Recuperado</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Buscar</translation>
    </message>
    <message>
        <source>vehicle, tag=value, 2026-05, simulated</source>
        <translation>vehículo, etiqueta=valor, 2026-05, simulado</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Clase</translation>
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
        <translation>Compare antes y después solo con igual temperatura, velocidad, reposo, lado, montaje y aceite.</translation>
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
        <source>Before anyone pulls</source>
        <translation>Antes de que nadie tire</translation>
    </message>
    <message>
        <source>This is practice on a simulated axle, nothing can move. On a real car each of these is checked by hand.</source>
        <translation>Esto es una práctica en un eje simulado, nada puede moverse. En un coche real cada punto se comprueba a mano.</translation>
    </message>
    <message>
        <source>Do each, then tick it: the space bar ticks the next one. The maker's manual always comes first.</source>
        <translation>Haga cada punto y márquelo: la barra espaciadora marca el siguiente. El manual del fabricante siempre va primero.</translation>
    </message>
    <message>
        <source>Afterwards:</source>
        <translation>Después:</translation>
    </message>
    <message>
        <source>Simulated: this must never be filed as a test.</source>
        <translation>Simulado: esto nunca debe archivarse como ensayo.</translation>
    </message>
    <message>
        <source>Sign the test</source>
        <translation>Firmar el ensayo</translation>
    </message>
    <message>
        <source>The test is finished</source>
        <translation>El ensayo ha terminado</translation>
    </message>
    <message>
        <source>Within</source>
        <translation>Dentro</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Fuera</translation>
    </message>
    <message>
        <source>Too close to call</source>
        <translation>Demasiado justo</translation>
    </message>
    <message>
        <source>Not valid</source>
        <translation>No válido</translation>
    </message>
    <message>
        <source>No result yet</source>
        <translation>Sin resultado todavía</translation>
    </message>
    <message>
        <source>Job card</source>
        <translation>Ficha de trabajo</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Trabajo</translation>
    </message>
    <message>
        <source>Kind of test</source>
        <translation>Tipo de ensayo</translation>
    </message>
    <message>
        <source>Fixture</source>
        <translation>Montaje</translation>
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
        <source>Value of this job</source>
        <translation>Valor de este trabajo</translation>
    </message>
    <message>
        <source>Pulls: %1 of %2</source>
        <translation>Tirones: %1 de %2</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Saltar</translation>
    </message>
    <message>
        <source>Back to the pulls</source>
        <translation>Volver a los tirones</translation>
    </message>
    <message>
        <source>End the test</source>
        <translation>Terminar el ensayo</translation>
    </message>
    <message>
        <source>Far view</source>
        <translation>Vista lejana</translation>
    </message>
    <message>
        <source>Dial reading</source>
        <translation>Lectura de esfera</translation>
    </message>
    <message>
        <source>Exclude last pull</source>
        <translation>Excluir el último</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Practise now</source>
        <translation>Practicar ahora</translation>
    </message>
    <message>
        <source>Choose a transducer</source>
        <translation>Elegir transductor</translation>
    </message>
    <message>
        <source>Type a reading</source>
        <translation>Escribir una lectura</translation>
    </message>
    <message>
        <source>Hold one wheel, turn the other</source>
        <translation>Sujete una rueda, gire la otra</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Entendido</translation>
    </message>
    <message>
        <source>Take a new zero</source>
        <translation>Tomar un cero nuevo</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Save the page to print</source>
        <translation>Guardar la página para imprimir</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Precauciones</translation>
    </message>
    <message>
        <source>Mistakes and their sizes</source>
        <translation>Errores y su tamaño</translation>
    </message>
    <message>
        <source>Finish with %1 of %2 pulls</source>
        <translation>Terminar con %1 de %2 tirones</translation>
    </message>
</context>
</TS>
