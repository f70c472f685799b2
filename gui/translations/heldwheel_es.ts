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
        <source>How the lever meets the wheel. Key 3</source>
        <translation>Cómo se une la palanca a la rueda. Tecla 3</translation>
    </message>
    <message>
        <source>hand</source>
        <translation>mano</translation>
    </message>
    <message>
        <source>drive</source>
        <translation>cuadrado</translation>
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
        <source>Lever at the start, from 3 o'clock</source>
        <translation>Palanca al inicio, desde las 3</translation>
    </message>
    <message>
        <source>0° = 3 o'clock, clockwise</source>
        <translation>0° = las 3, en sentido horario</translation>
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
        <source>Safety checks</source>
        <translation>Seguridad</translation>
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
        <source>Zero again</source>
        <translation>Cero final</translation>
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
        <translation>Desv. típica, %1</translation>
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
        <translation>Cómo se sujetó y se giró</translation>
    </message>
    <message>
        <source>Oil in detail</source>
        <translation>Aceite en detalle</translation>
    </message>
    <message>
        <source>The axle's history</source>
        <translation>Historial del eje</translation>
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
        <source>Finish with %1 of %2 pulls</source>
        <translation>Terminar con %1 de %2 tirones</translation>
    </message>
    <message>
        <source>A test is under way. Close all the same?</source>
        <translation>Hay un ensayo en marcha. ¿Cerrar de todos modos?</translation>
    </message>
    <message>
        <source>Colours, text size, units, language, folder, what appears on reports</source>
        <translation>Colores, tamaño del texto, unidades, idioma, carpeta, lo que aparece en los informes</translation>
    </message>
    <message>
        <source>Go on testing</source>
        <translation>Seguir con el ensayo</translation>
    </message>
    <message>
        <source>Its recording is closed properly and stands on Review, the job card is kept; the test stays unsigned.</source>
        <translation>Su registro se cierra bien y queda en Revisar, la ficha se conserva; el ensayo queda sin firmar.</translation>
    </message>
    <message>
        <source>Next unit, Ctrl+U</source>
        <translation>Unidad siguiente, Ctrl+U</translation>
    </message>
    <message>
        <source>Not a recording, a table or a folder: %1</source>
        <translation>No es registro, tabla ni carpeta: %1</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>%1 cut off before being closed. Everything saved until then is there.</source>
        <translation>%1 sin cerrar. Todo lo guardado hasta entonces está ahí.</translation>
    </message>
    <message>
        <source>A recording was</source>
        <translation>Un registro quedó</translation>
    </message>
    <message>
        <source>One recording was</source>
        <translation>Un registro quedó</translation>
    </message>
    <message>
        <source>%1 recordings were</source>
        <translation>%1 registros quedaron</translation>
    </message>
    <message>
        <source>It was counted as %1 to %2: one of the two is wrong.</source>
        <translation>Se contó %1 a %2: uno de los dos es erróneo.</translation>
    </message>
    <message>
        <source>Nothing has been changed yet.</source>
        <translation>Todavía no se ha cambiado nada.</translation>
    </message>
    <message>
        <source>Say why: the reason is kept with the change.</source>
        <translation>Diga por qué: el motivo se guarda con el cambio.</translation>
    </message>
    <message>
        <source>Enter who did the test.</source>
        <translation>Indique quién hizo el ensayo.</translation>
    </message>
    <message>
        <source>There is no reading yet: keep one first.</source>
        <translation>Aún no hay lectura: guarde una primero.</translation>
    </message>
    <message>
        <source>No fixture yet: say how the lever meets the wheel.</source>
        <translation>Aún sin utillaje: diga cómo se une la palanca a la rueda.</translation>
    </message>
    <message>
        <source>Something unexpected went wrong (%1: %2). What is recorded is safe.</source>
        <translation>Algo inesperado ha fallado (%1: %2). Lo registrado está a salvo.</translation>
    </message>
    <message>
        <source>Type not stated</source>
        <translation>Tipo no indicado</translation>
    </message>
    <message>
        <source>With packs, kind not known</source>
        <translation>Con paquetes de discos, clase desconocida</translation>
    </message>
    <message>
        <source>Nothing was recognised yet.</source>
        <translation>Aún no se ha reconocido nada.</translation>
    </message>
    <message>
        <source>Give it a name first, to find it again in the list.</source>
        <translation>Primero déle un nombre, para encontrarlo en la lista.</translation>
    </message>
    <message>
        <source>The two figures disagree: %1 N·m and %2 N·m. One of them is misprinted or mistyped.</source>
        <translation>Las dos cifras no concuerdan: %1 N·m y %2 N·m. Una está mal impresa o mal escrita.</translation>
    </message>
    <message>
        <source>%1 (simulated)</source>
        <translation>%1 (simulado)</translation>
    </message>
    <message>
        <source>Half of a ratio</source>
        <translation>Mitad de una relación</translation>
    </message>
    <message>
        <source>No limit to compare with</source>
        <translation>Sin límite con que comparar</translation>
    </message>
    <message>
        <source>The limit compares a recording in gear with one in neutral: say under “Kind of test” which this is.</source>
        <translation>El límite compara un registro con marcha con uno en punto muerto: diga en «Clase de ensayo» cuál es este.</translation>
    </message>
    <message>
        <source>This is the half %1. The limit compares two recordings, both wheels free: the rotating maximum in gear ÷ that in neutral. Record the half %2, too; on the Review page choose both.</source>
        <translation>Esta es la mitad %1. El límite compara dos registros, ambas ruedas libres: el par de giro máximo con marcha ÷ el de punto muerto. Registre también la mitad %2; en Revisar elija ambos.</translation>
    </message>
    <message>
        <source>connecting</source>
        <translation>conectando</translation>
    </message>
    <message>
        <source>ended</source>
        <translation>terminado</translation>
    </message>
    <message>
        <source>live</source>
        <translation>en vivo</translation>
    </message>
    <message>
        <source>reconnecting</source>
        <translation>reconectando</translation>
    </message>
    <message>
        <source>silent</source>
        <translation>en silencio</translation>
    </message>
    <message>
        <source>done</source>
        <translation>hecho</translation>
    </message>
    <message>
        <source>now</source>
        <translation>ahora</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>omitido</translation>
    </message>
    <message>
        <source>wrong</source>
        <translation>mal</translation>
    </message>
    <message>
        <source>A name is made of letters, digits, blanks and dashes.</source>
        <translation>Un nombre se hace de letras, cifras, espacios y guiones.</translation>
    </message>
    <message>
        <source>Tests name their drag and zero recordings: these keep their names.</source>
        <translation>Los ensayos nombran sus registros de arrastre y cero: estos conservan su nombre.</translation>
    </message>
    <message>
        <source>There is a %1 already.</source>
        <translation>Ya hay un %1.</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Copiar</translation>
    </message>
    <message>
        <source>Heldwheel records the torque at a wheel while it is turned by a lever, and says what it is worth. It measures; it does not declare a car safe or legal.</source>
        <translation>Heldwheel registra el par en una rueda mientras se gira con una palanca, y dice cuánto vale. Mide; no declara un coche seguro ni legal.</translation>
    </message>
    <message>
        <source>Key Esc</source>
        <translation>Tecla Esc</translation>
    </message>
    <message>
        <source>Paper trail: a recording is closed with its SHA-256 and never changed. What is decided later stands beside it with time, name and reason, and makes a new revision once the test is signed. A report names both by their hashes; heldwheel-read report --verify does the work again and compares.</source>
        <translation>Rastro: un registro se cierra con su SHA-256 y nunca se cambia. Lo decidido después queda a su lado con hora, nombre y motivo, y tras la firma hace una nueva revisión. Un informe nombra ambos por su suma; heldwheel-read report --verify repite el cálculo y compara.</translation>
    </message>
    <message>
        <source>Recordings: %1</source>
        <translation>Registros: %1</translation>
    </message>
    <message>
        <source>Settings and lists: %1</source>
        <translation>Ajustes y listas: %1</translation>
    </message>
    <message>
        <source>These lines, for a message</source>
        <translation>Estas líneas, para un mensaje</translation>
    </message>
    <message>
        <source>All recordings</source>
        <translation>Todos los registros</translation>
    </message>
    <message>
        <source>Dial readings</source>
        <translation>Lecturas de esfera</translation>
    </message>
    <message>
        <source>Tests</source>
        <translation>Ensayos</translation>
    </message>
    <message>
        <source>Nothing is found. Take a word out of the search, or choose another kind.</source>
        <translation>No se encuentra nada. Quite una palabra de la búsqueda o elija otra clase.</translation>
    </message>
    <message>
        <source>There is no recording here yet. Make a test, practise, or drop a recording, a table or a folder on this window.</source>
        <translation>Aquí aún no hay registro. Haga un ensayo, practique, o suelte un registro, una tabla o una carpeta sobre esta ventana.</translation>
    </message>
    <message>
        <source>%1 recordings</source>
        <translation>%1 registros</translation>
    </message>
    <message>
        <source>%1 of %2 recordings</source>
        <translation>%1 de %2 registros</translation>
    </message>
    <message>
        <source>A budget needs at least one valid pull and a fixture.</source>
        <translation>Un balance necesita al menos un tirón válido y un utillaje.</translation>
    </message>
    <message>
        <source>Contribution</source>
        <translation>Contribución</translation>
    </message>
    <message>
        <source>Input</source>
        <translation>Entrada</translation>
    </message>
    <message>
        <source>Sensitivity</source>
        <translation>Sensibilidad</translation>
    </message>
    <message>
        <source>Share</source>
        <translation>Parte</translation>
    </message>
    <message>
        <source>Standard uncertainty</source>
        <translation>Incertidumbre típica</translation>
    </message>
    <message>
        <source>Together %1 (95 %), %2 effective degrees of freedom; contributions in %3. According to JCGM 100.</source>
        <translation>En conjunto %1 (95 %), %2 grados de libertad efectivos; contribuciones en %3. Según JCGM 100.</translation>
    </message>
    <message>
        <source>Uncertainty budget</source>
        <translation>Balance de incertidumbre</translation>
    </message>
    <message>
        <source>Uncertainty budget of</source>
        <translation>Balance de incertidumbre de</translation>
    </message>
    <message>
        <source>Bluetooth, serial, virtual</source>
        <translation>Bluetooth, serie, virtual</translation>
    </message>
    <message>
        <source>How the lever meets the wheel</source>
        <translation>Cómo se une la palanca a la rueda</translation>
    </message>
    <message>
        <source>Limit, %1 · %2</source>
        <translation>Límite, %1 · %2</translation>
    </message>
    <message>
        <source>New job, as last time, earlier jobs</source>
        <translation>Trabajo nuevo, como la última vez, trabajos anteriores</translation>
    </message>
    <message>
        <source>No fixture yet</source>
        <translation>Aún sin utillaje</translation>
    </message>
    <message>
        <source>No limit</source>
        <translation>Sin límite</translation>
    </message>
    <message>
        <source>Not chosen</source>
        <translation>Sin elegir</translation>
    </message>
    <message>
        <source>Not usable yet</source>
        <translation>Aún no utilizable</translation>
    </message>
    <message>
        <source>On the wrong type the number means nothing</source>
        <translation>En un tipo equivocado la cifra no significa nada</translation>
    </message>
    <message>
        <source>Open it to see what is missing</source>
        <translation>Ábralo para ver qué falta</translation>
    </message>
    <message>
        <source>Practice card: your job card comes back afterwards</source>
        <translation>Ficha de práctica: su ficha vuelve después</translation>
    </message>
    <message>
        <source>Values are shown, none is judged</source>
        <translation>Se muestran valores, no se juzga ninguno</translation>
    </message>
    <message>
        <source>Written to %1</source>
        <translation>Escrito en %1</translation>
    </message>
    <message>
        <source>B at %1 s, R %2 to %3 s</source>
        <translation>B en %1 s, R de %2 a %3 s</translation>
    </message>
    <message>
        <source>Exclude this pull</source>
        <translation>Excluir este tirón</translation>
    </message>
    <message>
        <source>Let it count again</source>
        <translation>Que vuelva a contar</translation>
    </message>
    <message>
        <source>Nothing has been moved yet.</source>
        <translation>Aún no se ha movido nada.</translation>
    </message>
    <message>
        <source>Pull %1: drag B and the stretch</source>
        <translation>Tirón %1: arrastre B y el tramo</translation>
    </message>
    <message>
        <source>Reason, kept with the decision</source>
        <translation>Motivo, se guarda con la decisión</translation>
    </message>
    <message>
        <source>Restore automatic marks</source>
        <translation>Restaurar las marcas automáticas</translation>
    </message>
    <message>
        <source>Save correction</source>
        <translation>Guardar la corrección</translation>
    </message>
    <message>
        <source>the lever knocked against the stand</source>
        <translation>la palanca chocó con el caballete</translation>
    </message>
    <message>
        <source>Edit details</source>
        <translation>Editar detalles</translation>
    </message>
    <message>
        <source>Edit details: written beside the recording, which stays as it is</source>
        <translation>Editar detalles: se escribe junto al registro, que queda como está</translation>
    </message>
    <message>
        <source>Reason, kept with the change</source>
        <translation>Motivo, se guarda con el cambio</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>The fixture has faults: put them right first.</source>
        <translation>El utillaje tiene fallos: corríjalos primero.</translation>
    </message>
    <message>
        <source>the lever was measured afterwards</source>
        <translation>la palanca se midió después</translation>
    </message>
    <message>
        <source>%1 Pulls are recorded, but no result is given.</source>
        <translation>%1 Los tirones se registran, pero no se da resultado.</translation>
    </message>
    <message>
        <source>&amp;Shim</source>
        <translation>&amp;Suplemento</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Deshacer</translation>
    </message>
    <message>
        <source>2 × 6 plates, order, springs</source>
        <translation>2 × 6 discos, orden, muelles</translation>
    </message>
    <message>
        <source>3.73 or 41/11</source>
        <translation>3,73 o 41/11</translation>
    </message>
    <message>
        <source>A tag can be wrong after a swap. Turns of propshaft and wheels tell the ratio.</source>
        <translation>Una placa puede ser falsa tras un cambio. Las vueltas del árbol y de las ruedas dicen la relación.</translation>
    </message>
    <message>
        <source>Axle &amp;tag</source>
        <translation>Pla&amp;ca del eje</translation>
    </message>
    <message>
        <source>Count the turns</source>
        <translation>Contar vueltas</translation>
    </message>
    <message>
        <source>Counted, %1: %2, %3.</source>
        <translation>Contado, %1: %2, %3.</translation>
    </message>
    <message>
        <source>Find the type</source>
        <translation>Hallar el tipo</translation>
    </message>
    <message>
        <source>Pack &amp;build</source>
        <translation>Montaje del paquete</translation>
    </message>
    <message>
        <source>R&amp;eason to judge it all the same, kept with the recording</source>
        <translation>Motivo para juzgarlo d&amp;e todos modos, queda con el registro</translation>
    </message>
    <message>
        <source>Rat&amp;io</source>
        <translation>Relac&amp;ión</translation>
    </message>
    <message>
        <source>T&amp;ype found</source>
        <translation>T&amp;ipo hallado</translation>
    </message>
    <message>
        <source>Takes the last change back. Ctrl+Z</source>
        <translation>Retira el último cambio. Ctrl+Z</translation>
    </message>
    <message>
        <source>Which axle it is, and whether a held-wheel torque means anything for it.</source>
        <translation>Qué eje es, y si un par con rueda sujeta significa algo en él.</translation>
    </message>
    <message>
        <source>as stamped</source>
        <translation>como está grabado</translation>
    </message>
    <message>
        <source>before and after on the same axle</source>
        <translation>antes y después en el mismo eje</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Hecho</translation>
    </message>
    <message>
        <source>Imported from %1 as %2</source>
        <translation>Importado de %1 como %2</translation>
    </message>
    <message>
        <source>Saved as %1</source>
        <translation>Guardado como %1</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Importar</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Quitar</translation>
    </message>
    <message>
        <source>Nothing saved yet</source>
        <translation>Aún no hay nada guardado</translation>
    </message>
    <message>
        <source>Pick one of %1</source>
        <translation>Elija uno de %1</translation>
    </message>
    <message>
        <source>%1 Both driven wheels raised.</source>
        <translation>%1 Ambas ruedas motrices levantadas.</translation>
    </message>
    <message>
        <source>%1 types fit</source>
        <translation>Encajan %1 tipos</translation>
    </message>
    <message>
        <source>Answer first</source>
        <translation>Responda primero</translation>
    </message>
    <message>
        <source>Answer what you can try; each answer rules types out.</source>
        <translation>Conteste lo que pueda probar; cada respuesta descarta tipos.</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Hallado</translation>
    </message>
    <message>
        <source>If a tag or the parts list tells which:</source>
        <translation>Si la placa o la lista de piezas lo dice:</translation>
    </message>
    <message>
        <source>Not judged</source>
        <translation>Sin evaluar</translation>
    </message>
    <message>
        <source>Not tried yet</source>
        <translation>Aún sin probar</translation>
    </message>
    <message>
        <source>Nothing fits</source>
        <translation>Nada encaja</translation>
    </message>
    <message>
        <source>Nothing tried yet</source>
        <translation>Aún no se ha probado nada</translation>
    </message>
    <message>
        <source>Put %1 on the card</source>
        <translation>Poner %1 en la ficha</translation>
    </message>
    <message>
        <source>Put it on the card</source>
        <translation>Ponerlo en la ficha</translation>
    </message>
    <message>
        <source>Stud circle: take %1</source>
        <translation>Círculo de espárragos: tomar %1</translation>
    </message>
    <message>
        <source>The two studs are</source>
        <translation>Los dos espárragos son</translation>
    </message>
    <message>
        <source>Where a stud circle cannot be measured across: measure from one stud's edge to the same edge of another.</source>
        <translation>Si el círculo no se puede medir de lado a lado: mida del borde de un espárrago al mismo borde de otro.</translation>
    </message>
    <message>
        <source>one reading</source>
        <translation>una lectura</translation>
    </message>
    <message>
        <source>Accuracy class (max. error)</source>
        <translation>Clase de exactitud (error máx.)</translation>
    </message>
    <message>
        <source>Customer's page</source>
        <translation>Página del cliente</translation>
    </message>
    <message>
        <source>First the checks</source>
        <translation>Primero la seguridad</translation>
    </message>
    <message>
        <source>Forget the last one</source>
        <translation>Olvidar la última</translation>
    </message>
    <message>
        <source>Full scale</source>
        <translation>Fondo de escala</translation>
    </message>
    <message>
        <source>Keep this reading</source>
        <translation>Guardar esta lectura</translation>
    </message>
    <message>
        <source>Make report</source>
        <translation>Hacer informe</translation>
    </message>
    <message>
        <source>One page, PDF</source>
        <translation>Una página, PDF</translation>
    </message>
    <message>
        <source>Open in Review</source>
        <translation>Abrir en Revisar</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Lectura</translation>
    </message>
    <message>
        <source>Return key</source>
        <translation>Tecla Intro</translation>
    </message>
    <message>
        <source>Scale division</source>
        <translation>División de escala</translation>
    </message>
    <message>
        <source>Sign and file</source>
        <translation>Firmar y archivar</translation>
    </message>
    <message>
        <source>The engineer's page, PDF</source>
        <translation>La página del técnico, PDF</translation>
    </message>
    <message>
        <source>Type what the dial showed: lever, interval and limit apply as to a recording.</source>
        <translation>Escriba lo que mostró la esfera: palanca, intervalo y límite valen como en un registro.</translation>
    </message>
    <message>
        <source>Unit of the dial</source>
        <translation>Unidad de la esfera</translation>
    </message>
    <message>
        <source>What was read</source>
        <translation>Qué se leyó</translation>
    </message>
    <message>
        <source>Writes the job to the recordings</source>
        <translation>Escribe el trabajo entre los registros</translation>
    </message>
    <message>
        <source>Writing the page …</source>
        <translation>Escribiendo la página …</translation>
    </message>
    <message>
        <source>first name, or initials</source>
        <translation>nombre de pila o iniciales</translation>
    </message>
    <message>
        <source>No limit for this quantity</source>
        <translation>Sin límite para esta magnitud</translation>
    </message>
    <message>
        <source>At the axle: reading × %1</source>
        <translation>En el eje: lectura × %1</translation>
    </message>
    <message>
        <source>%1 (%2 to %3)</source>
        <translation>%1 (%2 a %3)</translation>
    </message>
    <message>
        <source>Open the file</source>
        <translation>Abrir el archivo</translation>
    </message>
    <message>
        <source>Factor</source>
        <translation>Factor</translation>
    </message>
    <message>
        <source>Hub drawing</source>
        <translation>Dibujo del cubo</translation>
    </message>
    <message>
        <source>no fixture yet</source>
        <translation>aún sin utillaje</translation>
    </message>
    <message>
        <source>%1 studs, lever %2° off the radius</source>
        <translation>%1 espárragos, palanca a %2° del radio</translation>
    </message>
    <message>
        <source>A pull: load smoothly over two to three seconds; the first peak is the breakaway torque B; keep turning slowly, the steady level is the rotating torque R; ease the load off and keep hold of the lever.</source>
        <translation>Un tirón: cargue con suavidad en dos o tres segundos; el primer pico es el par de arranque B; siga girando despacio, el nivel estable es el par de giro R; retire la carga sin soltar la palanca.</translation>
    </message>
    <message>
        <source>Name: %1</source>
        <translation>Nombre: %1</translation>
    </message>
    <message>
        <source>a transducer</source>
        <translation>un transductor</translation>
    </message>
    <message>
        <source>a fixture</source>
        <translation>un utillaje</translation>
    </message>
    <message>
        <source>a kind of test</source>
        <translation>una clase de ensayo</translation>
    </message>
    <message>
        <source>virtual transducer</source>
        <translation>transductor virtual</translation>
    </message>
    <message>
        <source>Transducer connecting</source>
        <translation>Transductor conectando</translation>
    </message>
    <message>
        <source>Let it rest: %1</source>
        <translation>Déjelo reposar: %1</translation>
    </message>
    <message>
        <source>%1 of %2 pulls</source>
        <translation>%1 de %2 tirones</translation>
    </message>
    <message>
        <source>Bytes %1</source>
        <translation>Bytes %1</translation>
    </message>
    <message>
        <source>%1 readings, %2, %3 a second</source>
        <translation>%1 lecturas, %2, %3 por segundo</translation>
    </message>
    <message>
        <source>Hash: %1 (shows that it is unchanged, not that it is genuine)</source>
        <translation>Suma: %1 (muestra que no ha cambiado, no que sea auténtico)</translation>
    </message>
    <message>
        <source>%1 recordings, %2 more</source>
        <translation>%1 registros, %2 más</translation>
    </message>
    <message>
        <source>•  %1</source>
        <translation>•  %1</translation>
    </message>
    <message>
        <source>breakaway, %1</source>
        <translation>par de arranque, %1</translation>
    </message>
    <message>
        <source>rotating mean, %1</source>
        <translation>par de giro medio, %1</translation>
    </message>
    <message>
        <source>rotating maximum, %1</source>
        <translation>par de giro máximo, %1</translation>
    </message>
    <message>
        <source>in gear ÷ neutral at least %1</source>
        <translation>con marcha ÷ en punto muerto al menos %1</translation>
    </message>
    <message>
        <source>in gear ÷ neutral at most %1</source>
        <translation>con marcha ÷ en punto muerto como máximo %1</translation>
    </message>
    <message>
        <source>Time since the first pull (s)</source>
        <translation>Tiempo desde el primer tirón (s)</translation>
    </message>
    <message>
        <source>the limit does not say which part is held: a held case reads about double</source>
        <translation>el límite no dice qué parte va sujeta: con la caja sujeta se lee cerca del doble</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Parte</translation>
    </message>
    <message>
        <source>What is to be edited</source>
        <translation>Qué se va a editar</translation>
    </message>
    <message>
        <source>Packs</source>
        <translation>Paquetes</translation>
    </message>
    <message>
        <source>left %1 parts</source>
        <translation>izquierda %1 piezas</translation>
    </message>
    <message>
        <source>right %1 parts</source>
        <translation>derecha %1 piezas</translation>
    </message>
    <message>
        <source>picked: %1, %2</source>
        <translation>elegido: %1, %2</translation>
    </message>
    <message>
        <source>left %1</source>
        <translation>izquierda %1</translation>
    </message>
    <message>
        <source>right %1</source>
        <translation>derecha %1</translation>
    </message>
    <message>
        <source>Counted ratio between its neighbours</source>
        <translation>Relación contada entre sus vecinas</translation>
    </message>
    <message>
        <source>nothing counted yet</source>
        <translation>aún no se ha contado nada</translation>
    </message>
    <message>
        <source>not found</source>
        <translation>no hallado</translation>
    </message>
    <message>
        <source>Answer</source>
        <translation>Respuesta</translation>
    </message>
    <message>
        <source>Recordings read</source>
        <translation>Registros leídos</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabla</translation>
    </message>
    <message>
        <source>Tables</source>
        <translation>Tablas</translation>
    </message>
    <message>
        <source>All files</source>
        <translation>Todos los archivos</translation>
    </message>
    <message>
        <source>%1 against %2, %3 fills</source>
        <translation>%1 frente a %2, %3 llenados</translation>
    </message>
    <message>
        <source>Has a new pack run in?</source>
        <translation>¿Se ha asentado un paquete nuevo?</translation>
    </message>
    <message>
        <source>1. Test again every few cycles (figure-eights, both ways) and tag each recording with their number: cycles=12.</source>
        <translation>1. Ensaye otra vez cada pocos ciclos (ochos, ambos sentidos) y etiquete cada registro con su número: cycles=12.</translation>
    </message>
    <message>
        <source>2. Choose that tag on the left.</source>
        <translation>2. Elija esa etiqueta a la izquierda.</translation>
    </message>
    <message>
        <source>It has settled when the change over the last ten values lies, with its whole interval, within ± 1 % per ten cycles. The table says what was known after each value.</source>
        <translation>Está asentado cuando el cambio en los últimos diez valores queda, con todo su intervalo, dentro de ± 1 % por diez ciclos. La tabla dice qué se sabía tras cada valor.</translation>
    </message>
    <message>
        <source>still moving</source>
        <translation>aún cambia</translation>
    </message>
    <message>
        <source>too few yet</source>
        <translation>aún muy pocos</translation>
    </message>
    <message>
        <source>cannot be shown yet</source>
        <translation>aún no se puede demostrar</translation>
    </message>
    <message>
        <source>How good is your own measuring?</source>
        <translation>¿Qué tan buena es su propia medición?</translation>
    </message>
    <message>
        <source>1. Two operators or more test two axles or more, each of them twice or more, in mixed order. Nothing is changed between the tests.</source>
        <translation>1. Dos operarios o más ensayan dos ejes o más, cada uno dos veces o más, en orden mezclado. Nada cambia entre los ensayos.</translation>
    </message>
    <message>
        <source>2. Search for just these recordings. Each is one repeat; its tags or its job card name operator and axle.</source>
        <translation>2. Busque justo estos registros. Cada uno es una repetición; sus etiquetas o su ficha nombran operario y eje.</translation>
    </message>
    <message>
        <source>The answer: how far one reading can be trusted, and whether operators differ more than their own repeats do. Two transducers, or two operators, can also be set side by side, axle by axle.</source>
        <translation>La respuesta: cuánto se puede confiar en una lectura, y si los operarios difieren más que sus propias repeticiones. Dos transductores, o dos operarios, también se pueden poner lado a lado, eje por eje.</translation>
    </message>
    <message>
        <source>breakaway (%1)</source>
        <translation>par de arranque (%1)</translation>
    </message>
    <message>
        <source>rotating mean (%1)</source>
        <translation>par de giro medio (%1)</translation>
    </message>
    <message>
        <source>Reading %1 recordings for %2</source>
        <translation>Leyendo %1 registros para %2</translation>
    </message>
    <message>
        <source>different test kinds: %1</source>
        <translation>clases de ensayo distintas: %1</translation>
    </message>
    <message>
        <source>different test kinds: %1.</source>
        <translation>clases de ensayo distintas: %1.</translation>
    </message>
    <message>
        <source>different places of the torque (axle, sensor): %1</source>
        <translation>lugares distintos del par (eje, transductor): %1</translation>
    </message>
    <message>
        <source>different fixtures: %1</source>
        <translation>utillajes distintos: %1</translation>
    </message>
    <message>
        <source>different sides: %1</source>
        <translation>lados distintos: %1</translation>
    </message>
    <message>
        <source>Save the report as</source>
        <translation>Guardar el informe como</translation>
    </message>
    <message>
        <source>Export to</source>
        <translation>Exportar a</translation>
    </message>
    <message>
        <source>Bytes</source>
        <translation>Bytes</translation>
    </message>
    <message>
        <source>Pull %1</source>
        <translation>Tirón %1</translation>
    </message>
    <message>
        <source>excluded: %1</source>
        <translation>excluido: %1</translation>
    </message>
    <message>
        <source>%1 cannot be read.</source>
        <translation>%1 no se puede leer.</translation>
    </message>
    <message>
        <source>pooled: %1</source>
        <translation>agrupada: %1</translation>
    </message>
    <message>
        <source>stud circle</source>
        <translation>círculo de espárragos</translation>
    </message>
    <message>
        <source>Undone: %1.</source>
        <translation>Deshecho: %1.</translation>
    </message>
    <message>
        <source>%1 for %2</source>
        <translation>%1 para %2</translation>
    </message>
    <message>
        <source>Undo what was decided about this pull</source>
        <translation>Deshacer lo decidido sobre este tirón</translation>
    </message>
    <message>
        <source>Chance of showing it (power)</source>
        <translation>Con qué seguridad se muestra (potencia)</translation>
    </message>
    <message>
        <source>torque %1</source>
        <translation>par %1</translation>
    </message>
    <message>
        <source>torque %1, %2</source>
        <translation>par %1, %2</translation>
    </message>
    <message>
        <source>chosen part: %1</source>
        <translation>pieza elegida: %1</translation>
    </message>
    <message>
        <source>holding %1 to %2</source>
        <translation>de retención %1 a %2</translation>
    </message>
    <message>
        <source>A bar on these two has its middle %1 off the wheel's centre.</source>
        <translation>Una barra en estos dos tiene su centro a %1 del centro de la rueda.</translation>
    </message>
    <message>
        <source>In use: %1, as typed.</source>
        <translation>En uso: %1, como se escribió.</translation>
    </message>
    <message>
        <source>In use as measured.</source>
        <translation>En uso como se midió.</translation>
    </message>
    <message>
        <source>As measured</source>
        <translation>Como se midió</translation>
    </message>
    <message>
        <source>Offset %1</source>
        <translation>Desvío %1</translation>
    </message>
    <message>
        <source>%1: type it on the left.</source>
        <translation>%1: escríbalo a la izquierda.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1. Pulls are recorded, but no result is given.</source>
        <translation>Este ensayo no dice nada de este tipo de eje, %1. Los tirones se registran, pero no se da resultado.</translation>
    </message>
    <message>
        <source>%1 could not be read</source>
        <translation>%1 no se pudieron leer</translation>
    </message>
    <message>
        <source>Import a fixture</source>
        <translation>Importar un utillaje</translation>
    </message>
    <message>
        <source>Import a limit</source>
        <translation>Importar un límite</translation>
    </message>
    <message>
        <source>Import a transducer</source>
        <translation>Importar un transductor</translation>
    </message>
    <message>
        <source>Label</source>
        <translation>Etiqueta</translation>
    </message>
    <message>
        <source>A label with a QR code for the lever: print it, or scan one</source>
        <translation>Una etiqueta con código QR para la palanca: imprimirla o leer una</translation>
    </message>
    <message>
        <source>Print a label …</source>
        <translation>Imprimir una etiqueta …</translation>
    </message>
    <message>
        <source>Save a label …</source>
        <translation>Guardar una etiqueta …</translation>
    </message>
    <message>
        <source>Scan a label</source>
        <translation>Leer una etiqueta</translation>
    </message>
    <message>
        <source>Scan the label now, or paste or type its line into the name.</source>
        <translation>Lea ahora la etiqueta, o pegue o escriba su línea en el nombre.</translation>
    </message>
    <message>
        <source>Filled from the label of %1</source>
        <translation>Rellenado con la etiqueta de %1</translation>
    </message>
    <message>
        <source>This fixture has faults; put them right first.</source>
        <translation>Este utillaje tiene errores; corríjalos primero.</translation>
    </message>
    <message>
        <source>This label: no label of a fixture: its line begins with HELDWHEEL FIXTURE</source>
        <translation>Esta etiqueta: no es la de un utillaje; su línea empieza por HELDWHEEL FIXTURE</translation>
    </message>
    <message>
        <source>This label: '%1' is in no label: it holds A to X, 0 to 9, blanks and points; is the scanner set to this keyboard?</source>
        <translation>Esta etiqueta: «%1» no está en ninguna etiqueta; tiene de A a X, de 0 a 9, espacios y puntos. ¿Está el lector ajustado a este teclado?</translation>
    </message>
    <message>
        <source>This label: the line does not end with CHECK and five digits: scan or copy the whole of it</source>
        <translation>Esta etiqueta: la línea no acaba con CHECK y cinco cifras; léala o cópiela entera</translation>
    </message>
    <message>
        <source>This label: CHECK: the check number does not fit the line: a character is mistyped, missing or too many</source>
        <translation>Esta etiqueta: CHECK: el número de control no concuerda con la línea; hay un carácter mal escrito, de menos o de más</translation>
    </message>
    <message>
        <source>This label: NAME: a Q stands alone in it; codes stand between two</source>
        <translation>Esta etiqueta: NAME: hay una Q suelta; un código va entre dos</translation>
    </message>
    <message>
        <source>This label: NAME: '%1' is the code of no character</source>
        <translation>Esta etiqueta: NAME: «%1» no es el código de ningún carácter</translation>
    </message>
    <message>
        <source>This label: KIND: is none of a fixture; there are: %1</source>
        <translation>Esta etiqueta: KIND: no es ninguna clase de utillaje; hay: %1</translation>
    </message>
    <message>
        <source>This label: '%1' is no field of a fixture</source>
        <translation>Esta etiqueta: «%1» no es ningún campo de un utillaje</translation>
    </message>
    <message>
        <source>This label: '%1' is no field of a fixture after %2</source>
        <translation>Esta etiqueta: «%1» no es ningún campo de un utillaje después de %2</translation>
    </message>
    <message>
        <source>This label: %1: stands twice</source>
        <translation>Esta etiqueta: %1: aparece dos veces</translation>
    </message>
    <message>
        <source>This label: %1: '%2' is no number</source>
        <translation>Esta etiqueta: %1: «%2» no es ningún número</translation>
    </message>
    <message>
        <source>This label: %1: '%2' is no count</source>
        <translation>Esta etiqueta: %1: «%2» no es ninguna cantidad entera</translation>
    </message>
    <message>
        <source>name: is too long for a label; this fixture takes %1 characters of %2</source>
        <translation>nombre: es demasiado largo para una etiqueta; este utillaje ocupa %1 caracteres de %2</translation>
    </message>
    <message>
        <source>Index of these reports …</source>
        <translation>Índice de estos informes …</translation>
    </message>
    <message>
        <source>Index of reports</source>
        <translation>Índice de informes</translation>
    </message>
    <message>
        <source>What stands above the list</source>
        <translation>Lo que figura sobre la lista</translation>
    </message>
    <message>
        <source>An index is being made</source>
        <translation>Se está haciendo un índice</translation>
    </message>
    <message>
        <source>%1 of %2 reports read for the index</source>
        <translation>%1 de %2 informes leídos para el índice</translation>
    </message>
    <message>
        <source>Index of one report written to %1</source>
        <translation>Índice de un informe escrito en %1</translation>
    </message>
    <message>
        <source>Index of %1 reports written to %2</source>
        <translation>Índice de %1 informes escrito en %2</translation>
    </message>
    <message>
        <source>Not listed: %1</source>
        <translation>No incluidos: %1</translation>
    </message>
    <message>
        <source>%1: is no report written by this program, or its record was taken out</source>
        <translation>%1: no es un informe de este programa, o se le quitaron sus datos</translation>
    </message>
    <message>
        <source>Not listed: %1: is no report written by this program, or its record was taken out</source>
        <translation>No incluidos: %1: no es un informe de este programa, o se le quitaron sus datos</translation>
    </message>
    <message>
        <source>%1: holds no report written by this program</source>
        <translation>%1: no contiene ningún informe de este programa</translation>
    </message>
    <message>
        <source>Export this fixture</source>
        <translation>Exportar este utillaje</translation>
    </message>
    <message>
        <source>Export this limit</source>
        <translation>Exportar este límite</translation>
    </message>
    <message>
        <source>Export this transducer</source>
        <translation>Exportar este transductor</translation>
    </message>
    <message>
        <source>Photographs of this test</source>
        <translation>Fotografías de este ensayo</translation>
    </message>
    <message>
        <source>First lines of the file</source>
        <translation>Primeras líneas del archivo</translation>
    </message>
    <message>
        <source>Bytes as they came</source>
        <translation>Bytes tal como llegaron</translation>
    </message>
    <message>
        <source>Save the recording in another folder</source>
        <translation>Guardar el registro en otra carpeta</translation>
    </message>
    <message>
        <source>different directions: %1</source>
        <translation>sentidos distintos: %1</translation>
    </message>
    <message>
        <source>different wheel on and off: %1</source>
        <translation>con y sin rueda: %1</translation>
    </message>
    <message>
        <source>different transducers: %1</source>
        <translation>transductores distintos: %1</translation>
    </message>
    <message>
        <source>different operators: %1; a difference between groups may be theirs as well</source>
        <translation>operarios distintos: %1; una diferencia entre grupos puede ser también suya</translation>
    </message>
    <message>
        <source>different fixtures: %1; a difference between groups may be theirs as well</source>
        <translation>utillajes distintos: %1; una diferencia entre grupos puede ser también suya</translation>
    </message>
    <message>
        <source>different sides: %1; a difference between groups may be theirs as well</source>
        <translation>lados distintos: %1; una diferencia entre grupos puede ser también suya</translation>
    </message>
    <message>
        <source>different directions: %1; a difference between groups may be theirs as well</source>
        <translation>sentidos distintos: %1; una diferencia entre grupos puede ser también suya</translation>
    </message>
    <message>
        <source>different transducers: %1; a difference between groups may be theirs as well</source>
        <translation>transductores distintos: %1; una diferencia entre grupos puede ser también suya</translation>
    </message>
    <message>
        <source>oil between %1 and %2 °C on average: two different oils</source>
        <translation>aceite entre %1 y %2 °C de media: dos aceites distintos</translation>
    </message>
    <message>
        <source>oil between %1 and %2 °C on average from group to group</source>
        <translation>aceite entre %1 y %2 °C de media de grupo a grupo</translation>
    </message>
    <message>
        <source>speed between %1 and %2 on average from group to group</source>
        <translation>velocidad entre %1 y %2 de media de grupo a grupo</translation>
    </message>
    <message>
        <source>rest before the pull between %1 and %2 on average from group to group</source>
        <translation>reposo antes del tirón entre %1 y %2 de media de grupo a grupo</translation>
    </message>
    <message>
        <source>other side held</source>
        <translation>otro lado sujeto</translation>
    </message>
    <message>
        <source>Average</source>
        <translation>Media</translation>
    </message>
    <message>
        <source>Watch an axle from job to job.</source>
        <translation>Seguir un eje de trabajo en trabajo.</translation>
    </message>
    <message>
        <source>The first jobs, known to be good, give level and scatter. After them a weighted average of the jobs is followed: a slow drift leaves its band within a few jobs, one odd job does not.</source>
        <translation>Los primeros trabajos, que se sabe buenos, dan nivel y dispersión. Tras ellos se sigue una media ponderada de los trabajos: una deriva lenta sale de su banda en pocos trabajos, un trabajo raro no.</translation>
    </message>
    <message>
        <source>Search for the axle's own recordings; four good jobs or more are needed.</source>
        <translation>Busque los registros de ese eje; hacen falta cuatro trabajos buenos o más.</translation>
    </message>
    <message>
        <source>Plan before you test: how many fills does a comparison need?</source>
        <translation>Planifique antes de ensayar: ¿cuántos llenados necesita una comparación?</translation>
    </message>
    <message>
        <source>1. The scatter from fill to fill: typed, or taken from recordings of three or four fills of one kind.</source>
        <translation>1. La dispersión de llenado a llenado: escrita, o tomada de registros de tres o cuatro llenados de una clase.</translation>
    </message>
    <message>
        <source>2. The difference that must not be missed, and how surely.</source>
        <translation>2. La diferencia que no debe pasar inadvertida, y con qué seguridad.</translation>
    </message>
    <message>
        <source>3. The groups, the control first: their order of tests is drawn by lot within blocks, so that a warm day or a tired arm does not fall on one group.</source>
        <translation>3. Los grupos, el control primero: el orden de los ensayos se sortea dentro de bloques, para que un día caluroso o un brazo cansado no caigan en un solo grupo.</translation>
    </message>
    <message>
        <source>More pulls of one fill do not replace another fill.</source>
        <translation>Más tirones de un llenado no sustituyen a otro llenado.</translation>
    </message>
    <message>
        <source>rear</source>
        <translation>trasero</translation>
    </message>
    <message>
        <source>mean %1 of %2</source>
        <translation>media %1 de %2</translation>
    </message>
    <message>
        <source>95 % lie within ± %1</source>
        <translation>el 95 % queda dentro de ± %1</translation>
    </message>
    <message>
        <source>%1 fills per group</source>
        <translation>%1 llenados por grupo</translation>
    </message>
    <message>
        <source>%1: %2 values in order, %3</source>
        <translation>%1: %2 valores en orden, %3</translation>
    </message>
    <message>
        <source>%1: %2 jobs, %3 out of band</source>
        <translation>%1: %2 trabajos, %3 fuera de banda</translation>
    </message>
    <message>
        <source>Follow a torque against a number: shim thickness, distance, temperature, share of modifier.</source>
        <translation>Seguir un par frente a un número: grosor del suplemento, distancia, temperatura, parte de modificador.</translation>
    </message>
    <message>
        <source>1. Give the recordings a tag that is a number, such as  shim_mm=0.3, or use what the job card states.</source>
        <translation>1. Dé a los registros una etiqueta que sea un número, p. ej.  shim_mm=0.3, o use lo que dice la ficha.</translation>
    </message>
    <message>
        <source>2. Choose it on the left. Then ask: which shim gives 60 N·m? What is to be expected at 1500 km?</source>
        <translation>2. Elíjala a la izquierda. Luego pregunte: ¿qué suplemento da 60 N·m? ¿Qué se espera a los 1500 km?</translation>
    </message>
    <message>
        <source>The band holds one further fill in 95 of 100 cases; three fills or more are needed.</source>
        <translation>La banda contiene un llenado más en 95 de cada 100 casos; hacen falta tres llenados o más.</translation>
    </message>
    <message>
        <source>Per 1 of %1: %2 (95 %: %3), a trend is shown.</source>
        <translation>Por 1 de %1: %2 (95 %: %3), se muestra una tendencia.</translation>
    </message>
    <message>
        <source>Per 1 of %1: %2 (95 %: %3), no trend is shown.</source>
        <translation>Por 1 de %1: %2 (95 %: %3), no se muestra tendencia.</translation>
    </message>
    <message>
        <source>shim, mm %1</source>
        <translation>suplemento, mm %1</translation>
    </message>
    <message>
        <source>shim, mm for %1</source>
        <translation>suplemento, mm, para %1</translation>
    </message>
    <message>
        <source>operator %1</source>
        <translation>operario %1</translation>
    </message>
    <message>
        <source>%1  (and %2 more below)</source>
        <translation>%1  (y %2 más abajo)</translation>
    </message>
    <message>
        <source>1,234.5 is one number</source>
        <translation>1,234.5 es un número</translation>
    </message>
    <message>
        <source>It marks decimals: 12,5</source>
        <translation>Marca decimales: 12,5</translation>
    </message>
    <message>
        <source>It stands between two numbers</source>
        <translation>Está entre dos números</translation>
    </message>
    <message>
        <source>Say what it means</source>
        <translation>Diga qué significa</translation>
    </message>
    <message>
        <source>Two numbers</source>
        <translation>Dos números</translation>
    </message>
    <message>
        <source>How long it has been still</source>
        <translation>Cuánto lleva quieto</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Carga</translation>
    </message>
    <message>
        <source>Allowed</source>
        <translation>Permitido</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>Mostrado</translation>
    </message>
    <message>
        <source>± at 95 %</source>
        <translation>± al 95 %</translation>
    </message>
    <message>
        <source>Check workshop transducer</source>
        <translation>Comprobar el transductor del taller</translation>
    </message>
    <message>
        <source>Practise on the virtual transducer</source>
        <translation>Practicar con el transductor virtual</translation>
    </message>
    <message>
        <source>Practise on the virtual transducer (simulated)</source>
        <translation>Practicar con el transductor virtual (simulado)</translation>
    </message>
    <message>
        <source>Steps of the check</source>
        <translation>Pasos de la comprobación</translation>
    </message>
    <message>
        <source>From the centre of the drive to where the weight hangs.</source>
        <translation>Del centro del cuadrado hasta donde cuelga el peso.</translation>
    </message>
    <message>
        <source>Hang nothing. Hands off</source>
        <translation>No cuelgue nada. Manos fuera</translation>
    </message>
    <message>
        <source>Hang nothing</source>
        <translation>No cuelgue nada</translation>
    </message>
    <message>
        <source>Measure now</source>
        <translation>Medir ahora</translation>
    </message>
    <message>
        <source>Waiting for readings …</source>
        <translation>Esperando lecturas …</translation>
    </message>
    <message>
        <source>moves now</source>
        <translation>se mueve ahora</translation>
    </message>
    <message>
        <source>Stud circle %1 = %2, standard uncertainty %3.</source>
        <translation>Círculo de espárragos %1 = %2, incertidumbre típica %3.</translation>
    </message>
    <message>
        <source>In use as measured; common circles near it:</source>
        <translation>En uso como se midió; círculos comunes cercanos:</translation>
    </message>
    <message>
        <source>Put clutch plate on the card</source>
        <translation>Poner de discos en la ficha</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>next step</source>
        <translation>paso siguiente</translation>
    </message>
    <message>
        <source>skip a step that may be skipped</source>
        <translation>saltar un paso, donde se puede</translation>
    </message>
    <message>
        <source>exclude the last pull, undo</source>
        <translation>excluir el último tirón, deshacer</translation>
    </message>
    <message>
        <source>far view, end the test</source>
        <translation>vista lejana, terminar el ensayo</translation>
    </message>
    <message>
        <source>practise, dial reading</source>
        <translation>practicar, lectura de esfera</translation>
    </message>
    <message>
        <source>1 to 6</source>
        <translation>1 a 6</translation>
    </message>
    <message>
        <source>job, kind of test, fixture, axle, limit, transducer</source>
        <translation>trabajo, clase de ensayo, utillaje, eje, límite, transductor</translation>
    </message>
    <message>
        <source>Ctrl+1, 2, 3</source>
        <translation>Ctrl+1, 2, 3</translation>
    </message>
    <message>
        <source>Test, Review, Compare</source>
        <translation>Ensayo, Revisar, Comparar</translation>
    </message>
    <message>
        <source>F2, Delete, Ctrl+Z</source>
        <translation>F2, Supr, Ctrl+Z</translation>
    </message>
    <message>
        <source>on Review: rename, remove, undo</source>
        <translation>en Revisar: cambiar el nombre, quitar, deshacer</translation>
    </message>
    <message>
        <source>0, +, −, arrows</source>
        <translation>0, +, −, flechas</translation>
    </message>
    <message>
        <source>on a trace: all of it, zoom, move</source>
        <translation>en una traza: toda, ampliar, mover</translation>
    </message>
    <message>
        <source>arrows, Return</source>
        <translation>flechas, Intro</translation>
    </message>
    <message>
        <source>on a picture of Compare: from point to point, open its recordings</source>
        <translation>en una imagen de Comparar: de punto a punto, abrir sus registros</translation>
    </message>
    <message>
        <source>Right button, Menu</source>
        <translation>Botón derecho, Menú</translation>
    </message>
    <message>
        <source>copy or save a picture; what can be done with a recording</source>
        <translation>copiar o guardar una imagen; qué se puede hacer con un registro</translation>
    </message>
    <message>
        <source>Ctrl+,</source>
        <translation>Ctrl+,</translation>
    </message>
    <message>
        <source>settings, About</source>
        <translation>ajustes, Acerca de</translation>
    </message>
    <message>
        <source>put a message away</source>
        <translation>quitar un mensaje</translation>
    </message>
    <message>
        <source>Ctrl+U, Ctrl+L</source>
        <translation>Ctrl+U, Ctrl+L</translation>
    </message>
    <message>
        <source>next unit, light or dark</source>
        <translation>unidad siguiente, claro u oscuro</translation>
    </message>
    <message>
        <source>Ctrl++, Ctrl+−</source>
        <translation>Ctrl++, Ctrl+−</translation>
    </message>
    <message>
        <source>larger and smaller text</source>
        <translation>texto mayor y menor</translation>
    </message>
    <message>
        <source>Save the guide as</source>
        <translation>Guardar la guía como</translation>
    </message>
    <message>
        <source>%1. That rules out %2.</source>
        <translation>%1. Eso descarta: %2.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1.</source>
        <translation>Este ensayo no dice nada de este tipo de eje, %1.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1. Pulls are recorded, but no result is given: put the type right on the Axle card, or a reason to judge it all the same.</source>
        <translation>Este ensayo no dice nada de este tipo de eje, %1. Los tirones se registran, pero no se da resultado: corrija el tipo en la ficha del eje, o dé una razón para juzgarlo de todos modos.</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral. Turn one wheel ten times by its chalk mark, and count the propshaft and the other wheel.</source>
        <translation>Ambas ruedas motrices levantadas, punto muerto. Gire una rueda diez veces por su marca de tiza y cuente el árbol y la otra rueda.</translation>
    </message>
    <message>
        <source>One wheel held: it counts 0, and the propshaft makes half of what it would with both: ratio = 2 × propshaft ÷ wheel.</source>
        <translation>Una rueda sujeta: cuenta 0, y el árbol hace la mitad que con ambas: relación = 2 × árbol ÷ rueda.</translation>
    </message>
    <message>
        <source>Both together: both count. Ratio = propshaft ÷ wheel.</source>
        <translation>Ambas juntas: ambas cuentan. Relación = árbol ÷ rueda.</translation>
    </message>
    <message>
        <source>A wheel that turned backwards counts negative: the sum of both is what matters.</source>
        <translation>Una rueda que giró hacia atrás cuenta en negativo: lo que importa es la suma de ambas.</translation>
    </message>
    <message>
        <source>Take the last saving or removing back</source>
        <translation>Deshacer el último guardado o borrado</translation>
    </message>
    <message>
        <source>What is in the axle: click a part, or add one behind it. Keep sides and order as they come out; never mix packs.</source>
        <translation>Qué hay en el eje: pulse una pieza o añada otra detrás. Conserve lados y orden tal como salen; nunca mezcle paquetes.</translation>
    </message>
    <message>
        <source>%1: %2 more. Key Shift+Up</source>
        <translation>%1: %2 más. Tecla Mayús+Arriba</translation>
    </message>
    <message>
        <source>Put %1 on the card, with its counts</source>
        <translation>Poner %1 en la ficha, con sus recuentos</translation>
    </message>
    <message>
        <source>sheet of %1</source>
        <translation>hoja del %1</translation>
    </message>
    <message>
        <source>%1 l, %2</source>
        <translation>%1 l, %2</translation>
    </message>
    <message>
        <source>How the lever meets the wheel. It decides what the reading means at the axle.</source>
        <translation>Cómo se une la palanca a la rueda. Decide lo que la lectura significa en el eje.</translation>
    </message>
    <message>
        <source>Kind of fixture</source>
        <translation>Clase de utillaje</translation>
    </message>
    <message>
        <source>Name, to find it again</source>
        <translation>Nombre, para encontrarlo</translation>
    </message>
    <message>
        <source>Not a usable fixture yet</source>
        <translation>Aún no es un utillaje utilizable</translation>
    </message>
    <message>
        <source>Still needed: %1</source>
        <translation>Aún hace falta: %1</translation>
    </message>
    <message>
        <source>Studs</source>
        <translation>Espárragos</translation>
    </message>
    <message>
        <source>long lever on five studs</source>
        <translation>palanca larga en cinco espárragos</translation>
    </message>
    <message>
        <source>%1 of %2 filled in</source>
        <translation>%1 de %2 rellenados</translation>
    </message>
    <message>
        <source>A whole number, such as 5</source>
        <translation>Un número entero, como 5</translation>
    </message>
    <message>
        <source>Gear</source>
        <translation>Marcha</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Sujeto</translation>
    </message>
    <message>
        <source>In the car</source>
        <translation>En el coche</translation>
    </message>
    <message>
        <source>On the bench</source>
        <translation>En el banco</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Izquierda</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Derecha</translation>
    </message>
    <message>
        <source>Neutral</source>
        <translation>Punto muerto</translation>
    </message>
    <message>
        <source>Measure the drag of both wheels free first</source>
        <translation>Medir primero el arrastre con ambas ruedas libres</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotografías</translation>
    </message>
    <message>
        <source>Pulls wanted</source>
        <translation>Tirones deseados</translation>
    </message>
    <message>
        <source>Rest before each pull</source>
        <translation>Reposo antes de cada tirón</translation>
    </message>
    <message>
        <source>Side turned</source>
        <translation>Lado girado</translation>
    </message>
    <message>
        <source>Vehicle and oil</source>
        <translation>Vehículo y aceite</translation>
    </message>
    <message>
        <source>What is tested, and how. Without the kind of test a limit cannot be compared.</source>
        <translation>Qué se ensaya y cómo. Sin la clase de ensayo no se puede comparar un límite.</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>1.645 u, one-sided 95 %</source>
        <translation>1,645 u, unilateral 95 %</translation>
    </message>
    <message>
        <source>At least</source>
        <translation>Al menos</translation>
    </message>
    <message>
        <source>At most</source>
        <translation>Como máximo</translation>
    </message>
    <message>
        <source>Condition</source>
        <translation>Condición</translation>
    </message>
    <message>
        <source>From your own manual or rule book, as printed there. Its source is kept with it.</source>
        <translation>De su propio manual o reglamento, como está impreso. La fuente se guarda con él.</translation>
    </message>
    <message>
        <source>From … to …</source>
        <translation>De … a …</translation>
    </message>
    <message>
        <source>Guard band</source>
        <translation>Banda de guarda</translation>
    </message>
    <message>
        <source>Guarded acceptance</source>
        <translation>Aceptación con guarda</translation>
    </message>
    <message>
        <source>Guarded rejection</source>
        <translation>Rechazo con guarda</translation>
    </message>
    <message>
        <source>In gear ÷ neutral, at least</source>
        <translation>Con marcha ÷ en punto muerto, al menos</translation>
    </message>
    <message>
        <source>No limit for this job</source>
        <translation>Sin límite para este trabajo</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Ninguno</translation>
    </message>
    <message>
        <source>Not less than</source>
        <translation>No menos de</translation>
    </message>
    <message>
        <source>Not more than</source>
        <translation>No más de</translation>
    </message>
    <message>
        <source>Page or section</source>
        <translation>Página o sección</translation>
    </message>
    <message>
        <source>Rule, agreed before the test</source>
        <translation>Regla, acordada antes del ensayo</translation>
    </message>
    <message>
        <source>Second unit</source>
        <translation>Segunda unidad</translation>
    </message>
    <message>
        <source>Simple acceptance</source>
        <translation>Aceptación simple</translation>
    </message>
    <message>
        <source>Source: manual or rule, and edition</source>
        <translation>Fuente: manual o regla, y edición</translation>
    </message>
    <message>
        <source>Test place</source>
        <translation>Lugar del ensayo</translation>
    </message>
    <message>
        <source>The same in a second unit, if printed</source>
        <translation>Lo mismo en otra unidad, si está impreso</translation>
    </message>
    <message>
        <source>Three-way (usual)</source>
        <translation>De tres vías (usual)</translation>
    </message>
    <message>
        <source>U, the 95 % interval</source>
        <translation>U, el intervalo del 95 %</translation>
    </message>
    <message>
        <source>Unit as printed</source>
        <translation>Unidad como está impresa</translation>
    </message>
    <message>
        <source>What it limits</source>
        <translation>Qué limita</translation>
    </message>
    <message>
        <source>rear axle, used plates</source>
        <translation>eje trasero, discos usados</translation>
    </message>
    <message>
        <source>used plates, oil at 40 °C</source>
        <translation>discos usados, aceite a 40 °C</translation>
    </message>
    <message>
        <source>workshop manual, 2nd edition</source>
        <translation>manual de taller, 2.ª edición</translation>
    </message>
    <message>
        <source>Add a photograph</source>
        <translation>Añadir fotografía</translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation>Devolverla</translation>
    </message>
    <message>
        <source>%1 is on the card already.</source>
        <translation>%1 ya está en la ficha.</translation>
    </message>
    <message>
        <source>%1 is removed from the card; the file is still there.</source>
        <translation>%1 se quitó de la ficha; el archivo sigue ahí.</translation>
    </message>
    <message>
        <source>Photographs (%1)</source>
        <translation>Fotografías (%1)</translation>
    </message>
    <message>
        <source>Remove %1 from the card</source>
        <translation>Quitar %1 de la ficha</translation>
    </message>
    <message>
        <source>Taking in %1 …</source>
        <translation>Tomando %1 …</translation>
    </message>
    <message>
        <source>What %1 shows</source>
        <translation>Qué muestra %1</translation>
    </message>
    <message>
        <source>how the wheel is held</source>
        <translation>cómo se sujeta la rueda</translation>
    </message>
    <message>
        <source>the axle's tag</source>
        <translation>la placa del eje</translation>
    </message>
    <message>
        <source>the lever on the wheel</source>
        <translation>la palanca en la rueda</translation>
    </message>
    <message>
        <source>the odometer</source>
        <translation>el cuentakilómetros</translation>
    </message>
    <message>
        <source>Second transducer, recorded along</source>
        <translation>Segundo transductor, registrado a la vez</translation>
    </message>
    <message>
        <source>Its port or Bluetooth address</source>
        <translation>Su puerto o dirección Bluetooth</translation>
    </message>
    <message>
        <source>the wheel's angle</source>
        <translation>el ángulo de la rueda</translation>
    </message>
    <message>
        <source>%1. Is the transducer switched on and near?</source>
        <translation>%1. ¿Está el transductor encendido y cerca?</translation>
    </message>
    <message>
        <source>/dev/ttyUSB0, COM3, or as found below</source>
        <translation>/dev/ttyUSB0, COM3, o como se halla abajo</translation>
    </message>
    <message>
        <source>Asking the device what it sends …</source>
        <translation>Preguntando al aparato qué envía …</translation>
    </message>
    <message>
        <source>Check with weights</source>
        <translation>Comprobar con pesas</translation>
    </message>
    <message>
        <source>Descriptions that come with the program</source>
        <translation>Descripciones que vienen con el programa</translation>
    </message>
    <message>
        <source>Found on this computer</source>
        <translation>Hallados en este ordenador</translation>
    </message>
    <message>
        <source>Hang known weights on an arm of known length</source>
        <translation>Colgar pesas conocidas de un brazo de longitud conocida</translation>
    </message>
    <message>
        <source>How its bytes become readings, and what its numbers are worth.</source>
        <translation>Cómo sus bytes se hacen lecturas, y cuánto valen sus números.</translation>
    </message>
    <message>
        <source>Learn an unknown one</source>
        <translation>Aprender uno desconocido</translation>
    </message>
    <message>
        <source>Listening for Bluetooth devices …</source>
        <translation>Escuchando aparatos Bluetooth …</translation>
    </message>
    <message>
        <source>Look for ports or Bluetooth</source>
        <translation>Buscar puertos o Bluetooth</translation>
    </message>
    <message>
        <source>No transducer chosen.</source>
        <translation>Ningún transductor elegido.</translation>
    </message>
    <message>
        <source>Port or Bluetooth address</source>
        <translation>Puerto o dirección Bluetooth</translation>
    </message>
    <message>
        <source>What its numbers are worth</source>
        <translation>Cuánto valen sus números</translation>
    </message>
    <message>
        <source>Space: next step    R: exclude last    F: close</source>
        <translation>Espacio: paso siguiente    R: excluir el último    F: cerrar</translation>
    </message>
    <message>
        <source>%1. Space bar</source>
        <translation>%1. Barra espaciadora</translation>
    </message>
    <message>
        <source>Key D</source>
        <translation>Tecla D</translation>
    </message>
    <message>
        <source>Key E</source>
        <translation>Tecla E</translation>
    </message>
    <message>
        <source>Key F</source>
        <translation>Tecla F</translation>
    </message>
    <message>
        <source>Key S</source>
        <translation>Tecla S</translation>
    </message>
    <message>
        <source>Key R</source>
        <translation>Tecla R</translation>
    </message>
    <message>
        <source>Key U</source>
        <translation>Tecla U</translation>
    </message>
    <message>
        <source>Key P</source>
        <translation>Tecla P</translation>
    </message>
    <message>
        <source>Key X</source>
        <translation>Tecla X</translation>
    </message>
    <message>
        <source>Key 0</source>
        <translation>Tecla 0</translation>
    </message>
    <message>
        <source>Key 6</source>
        <translation>Tecla 6</translation>
    </message>
    <message>
        <source>Key Enter</source>
        <translation>Tecla Intro</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Tecla %1</translation>
    </message>
    <message>
        <source>Keys 1 to 6</source>
        <translation>Teclas 1 a 6</translation>
    </message>
    <message>
        <source>More pulls after all</source>
        <translation>Más tirones al final</translation>
    </message>
    <message>
        <source>Skip to signing</source>
        <translation>Saltar a la firma</translation>
    </message>
    <message>
        <source>Space bar</source>
        <translation>Barra espaciadora</translation>
    </message>
    <message>
        <source>Stop after %1 of %2</source>
        <translation>Parar tras %1 de %2</translation>
    </message>
    <message>
        <source>Without drag</source>
        <translation>Sin arrastre</translation>
    </message>
    <message>
        <source>Without second zero</source>
        <translation>Sin segundo cero</translation>
    </message>
    <message>
        <source>none lost</source>
        <translation>nada perdido</translation>
    </message>
    <message>
        <source>with a gap</source>
        <translation>con un hueco</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Teclas</translation>
    </message>
    <message>
        <source>One sheet, PDF or HTML</source>
        <translation>Una hoja, PDF o HTML</translation>
    </message>
    <message>
        <source>All pulls are made: take the zero again</source>
        <translation>Todos los tirones hechos: tome el cero otra vez</translation>
    </message>
    <message>
        <source>Both wheels free: turn one slowly, two turns</source>
        <translation>Ambas ruedas libres: gire una despacio, dos vueltas</translation>
    </message>
    <message>
        <source>Coach</source>
        <translation>Guía</translation>
    </message>
    <message>
        <source>Hands off: taking the zero, %1</source>
        <translation>Manos fuera: tomando el cero, %1</translation>
    </message>
    <message>
        <source>Let the lever hang free once more, then take the zero again</source>
        <translation>Deje colgar la palanca otra vez y tome el cero de nuevo</translation>
    </message>
    <message>
        <source>Let the lever hang free or take it off, then take the zero</source>
        <translation>Deje colgar la palanca o quítela, y tome el cero</translation>
    </message>
    <message>
        <source>No signal: last reading</source>
        <translation>Sin señal: última lectura</translation>
    </message>
    <message>
        <source>No signal: wait, do not pull</source>
        <translation>Sin señal: espere, no tire</translation>
    </message>
    <message>
        <source>No transducer: connect again</source>
        <translation>Sin transductor: conecte de nuevo</translation>
    </message>
    <message>
        <source>Seconds ago</source>
        <translation>Segundos antes</translation>
    </message>
    <message>
        <source>Stretch of time shown</source>
        <translation>Tramo de tiempo mostrado</translation>
    </message>
    <message>
        <source>The reading moves: let the lever hang still</source>
        <translation>La lectura se mueve: deje la palanca quieta</translation>
    </message>
    <message>
        <source>Torque at the axle</source>
        <translation>Par en el eje</translation>
    </message>
    <message>
        <source>Torque at the axle, no zero yet</source>
        <translation>Par en el eje, aún sin cero</translation>
    </message>
    <message>
        <source>Torque shown by the transducer</source>
        <translation>Par mostrado por el transductor</translation>
    </message>
    <message>
        <source>Highest: the highest torque at the axle since the pulls began, with the load that is on now; excluded pulls do not count. Wheel: how far it has turned since the lever was last loaded, clockwise positive, and how fast it turns now.</source>
        <translation>Máximo: el par más alto en el eje desde que empezaron los tirones, con la carga de ahora mismo; los tirones excluidos no cuentan. Rueda: cuánto ha girado desde que se cargó la palanca por última vez, positivo en sentido horario, y a qué velocidad gira ahora.</translation>
    </message>
    <message>
        <source>%1 turns/min</source>
        <translation>%1 vueltas/min</translation>
    </message>
    <message>
        <source>Wheel in this pull</source>
        <translation>Rueda en este tirón</translation>
    </message>
    <message>
        <source>Highest: pull %1</source>
        <translation>Máximo: tirón %1</translation>
    </message>
    <message>
        <source>Highest so far</source>
        <translation>Máximo hasta ahora</translation>
    </message>
    <message>
        <source>Direction</source>
        <translation>Sentido</translation>
    </message>
    <message>
        <source>Pull</source>
        <translation>Tirón</translation>
    </message>
    <message>
        <source>Pulls of this recording</source>
        <translation>Tirones de este registro</translation>
    </message>
    <message>
        <source>Excluded: %1</source>
        <translation>Excluido: %1</translation>
    </message>
    <message>
        <source>No pull yet. Each pull is caught by itself: load the lever smoothly over two to three seconds, keep turning slowly while the wheel moves, ease the load off.</source>
        <translation>Aún ningún tirón. Cada tirón se capta solo: cargue la palanca con suavidad en dos o tres segundos, siga girando despacio mientras la rueda se mueve, retire la carga.</translation>
    </message>
    <message>
        <source>B is the breakaway torque, R the rotating torque, both at the axle.</source>
        <translation>B es el par de arranque, R el par de giro, ambos en el eje.</translation>
    </message>
    <message>
        <source>Rule: %1</source>
        <translation>Regla: %1</translation>
    </message>
    <message>
        <source>%1, median of %2 pulls</source>
        <translation>%1, mediana de %2 tirones</translation>
    </message>
    <message>
        <source>%1 recordings overlaid</source>
        <translation>%1 registros superpuestos</translation>
    </message>
    <message>
        <source>Against angle</source>
        <translation>Frente al ángulo</translation>
    </message>
    <message>
        <source>Below the trace</source>
        <translation>Bajo la traza</translation>
    </message>
    <message>
        <source>Budget</source>
        <translation>Balance</translation>
    </message>
    <message>
        <source>Choose a recording on the left.</source>
        <translation>Elija un registro a la izquierda.</translation>
    </message>
    <message>
        <source>Choose several, with Ctrl or Shift, to lay them over each other. Everything you decide here is written beside the recording, with your reason; the recording itself is never changed.</source>
        <translation>Elija varios, con Ctrl o Mayús, para superponerlos. Todo lo que decida aquí se escribe junto al registro, con su motivo; el registro mismo nunca se cambia.</translation>
    </message>
    <message>
        <source>Correct</source>
        <translation>Corregir</translation>
    </message>
    <message>
        <source>Details</source>
        <translation>Detalles</translation>
    </message>
    <message>
        <source>Move the marks of the chosen pull, with a reason</source>
        <translation>Mover las marcas del tirón elegido, con un motivo</translation>
    </message>
    <message>
        <source>Reading %1 (%2 MB) …</source>
        <translation>Leyendo %1 (%2 MB) …</translation>
    </message>
    <message>
        <source>Tags, to find and compare it by</source>
        <translation>Etiquetas, para encontrarlo y compararlo</translation>
    </message>
    <message>
        <source>This recording has no angle of the wheel.</source>
        <translation>Este registro no tiene ángulo de la rueda.</translation>
    </message>
    <message>
        <source>Pull %1, elastic line at the axle: %2 per degree, wind-up %3, play %4</source>
        <translation>Tirón %1, recta elástica en el eje: %2 por grado, torsión %3, juego %4</translation>
    </message>
    <message>
        <source>Pull %1, elastic line at the sensor: %2 per degree, wind-up %3, play %4</source>
        <translation>Tirón %1, recta elástica en el transductor: %2 por grado, torsión %3, juego %4</translation>
    </message>
    <message>
        <source>%1 turns a minute, %2 (%3 to %4)</source>
        <translation>%1 vueltas por minuto, %2 (%3 a %4)</translation>
    </message>
    <message>
        <source>good</source>
        <translation>bien</translation>
    </message>
    <message>
        <source>too slow</source>
        <translation>demasiado despacio</translation>
    </message>
    <message>
        <source>too fast</source>
        <translation>demasiado rápido</translation>
    </message>
    <message>
        <source>Torque against the wheel's angle</source>
        <translation>Par frente al ángulo de la rueda</translation>
    </message>
    <message>
        <source>Torque against the wheel's angle; “Whole trace” goes back to time</source>
        <translation>Par frente al ángulo de la rueda; «Traza entera» vuelve al tiempo</translation>
    </message>
    <message>
        <source>Whole trace</source>
        <translation>Traza entera</translation>
    </message>
    <message>
        <source>aligned at the first pull of each</source>
        <translation>alineados en el primer tirón de cada uno</translation>
    </message>
    <message>
        <source>In gear ÷ neutral, rotating maxima, 95 %</source>
        <translation>Con marcha ÷ en punto muerto, pares de giro máximos, 95 %</translation>
    </message>
    <message>
        <source>No fixture: Edit details gives the torque at the axle</source>
        <translation>Sin utillaje: «Editar detalles» da el par en el eje</translation>
    </message>
    <message>
        <source>No value</source>
        <translation>Sin valor</translation>
    </message>
    <message>
        <source>%1 at the axle, one pull</source>
        <translation>%1 en el eje, un tirón</translation>
    </message>
    <message>
        <source>%1 at the axle, median of %2 pulls</source>
        <translation>%1 en el eje, mediana de %2 tirones</translation>
    </message>
    <message>
        <source>%1 cut off before being closed. Everything saved until then is here: choose the kind “Recovered”.</source>
        <translation>%1 sin cerrar. Todo lo guardado hasta entonces está aquí: elija la clase «Recuperados».</translation>
    </message>
    <message>
        <source>A page to sign: for an engineer, or for a customer</source>
        <translation>Una página para firmar: para un técnico o para un cliente</translation>
    </message>
    <message>
        <source>CSV, or JSON</source>
        <translation>CSV o JSON</translation>
    </message>
    <message>
        <source>Choose a recording first.</source>
        <translation>Elija primero un registro.</translation>
    </message>
    <message>
        <source>Engineer's page</source>
        <translation>Página del técnico</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Conservar</translation>
    </message>
    <message>
        <source>Name of the recording</source>
        <translation>Nombre del registro</translation>
    </message>
    <message>
        <source>Page under another name …</source>
        <translation>Página con otro nombre …</translation>
    </message>
    <message>
        <source>Remove %1?</source>
        <translation>¿Quitar %1?</translation>
    </message>
    <message>
        <source>Rename</source>
        <translation>Cambiar el nombre</translation>
    </message>
    <message>
        <source>Rename  (F2)</source>
        <translation>Cambiar el nombre  (F2)</translation>
    </message>
    <message>
        <source>Remove  (Delete)</source>
        <translation>Quitar  (Supr)</translation>
    </message>
    <message>
        <source>Undo %1  (Ctrl+Z)</source>
        <translation>Deshacer: %1  (Ctrl+Z)</translation>
    </message>
    <message>
        <source>The folder answers slowly. Its recordings appear here as soon as it does.</source>
        <translation>La carpeta responde despacio. Sus registros aparecen aquí en cuanto responda.</translation>
    </message>
    <message>
        <source>The two recordings are still being read. Press Report again when both are shown.</source>
        <translation>Los dos registros aún se están leyendo. Pulse Informe otra vez cuando se vean ambos.</translation>
    </message>
    <message>
        <source>About</source>
        <translation>Acerca de</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Dirección</translation>
    </message>
    <message>
        <source>Authorised by</source>
        <translation>Autorizado por</translation>
    </message>
    <message>
        <source>Choose a folder</source>
        <translation>Elegir carpeta</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Colores</translation>
    </message>
    <message>
        <source>Comma: 38,5</source>
        <translation>Coma: 38,5</translation>
    </message>
    <message>
        <source>Point: 38.5</source>
        <translation>Punto: 38.5</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Oscuro</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Claro</translation>
    </message>
    <message>
        <source>For reports written from now on. Without a name here, a report shows the workshop that its recording names; without someone who authorises it, the line to sign on stays empty.</source>
        <translation>Para los informes desde ahora. Sin nombre aquí, un informe muestra el taller que su registro nombra; sin quien autorice, la línea de firma queda vacía.</translation>
    </message>
    <message>
        <source>Guide</source>
        <translation>Guía</translation>
    </message>
    <message>
        <source>How to make the test, and all keys: F1</source>
        <translation>Cómo hacer el ensayo, y todas las teclas: F1</translation>
    </message>
    <message>
        <source>Language, from the next start on</source>
        <translation>Idioma, desde el próximo inicio</translation>
    </message>
    <message>
        <source>New recordings go to</source>
        <translation>Los registros nuevos van a</translation>
    </message>
    <message>
        <source>On every report</source>
        <translation>En cada informe</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Tamaño del texto</translation>
    </message>
    <message>
        <source>Torque in</source>
        <translation>Par en</translation>
    </message>
    <message>
        <source>Version, folders, what it is built on</source>
        <translation>Versión, carpetas, sobre qué está hecho</translation>
    </message>
    <message>
        <source>Window</source>
        <translation>Ventana</translation>
    </message>
    <message>
        <source>Write the whole path of a folder.</source>
        <translation>Escriba la ruta entera de una carpeta.</translation>
    </message>
    <message>
        <source>a stroke / begins a new line</source>
        <translation>una barra / empieza otra línea</translation>
    </message>
    <message>
        <source>name at the head of the page</source>
        <translation>nombre en la cabecera de la página</translation>
    </message>
    <message>
        <source>printed under the line to sign on</source>
        <translation>impreso bajo la línea de firma</translation>
    </message>
    <message>
        <source>No pull counts, so there is no value.</source>
        <translation>Ningún tirón cuenta, así que no hay valor.</translation>
    </message>
    <message>
        <source>Trace, budget, report</source>
        <translation>Traza, balance, informe</translation>
    </message>
    <message>
        <source>%1 pulls count, %2 excluded, 95 % interval.</source>
        <translation>%1 tirones cuentan, %2 excluidos, intervalo del 95 %.</translation>
    </message>
    <message>
        <source>The zero moved by %1 from start to end.</source>
        <translation>El cero se movió %1 de principio a fin.</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>As last time: fixture, limit, transducer, kind of test</source>
        <translation>Como la última vez: utillaje, límite, transductor, clase de ensayo</translation>
    </message>
    <message>
        <source>End the test first</source>
        <translation>Termine primero el ensayo</translation>
    </message>
    <message>
        <source>End the test without signing %1?</source>
        <translation>¿Terminar el ensayo sin firmar %1?</translation>
    </message>
    <message>
        <source>its pull</source>
        <translation>su tirón</translation>
    </message>
    <message>
        <source>its %1 pulls</source>
        <translation>sus %1 tirones</translation>
    </message>
    <message>
        <source>New job</source>
        <translation>Trabajo nuevo</translation>
    </message>
    <message>
        <source>There is no recording to write a page of.</source>
        <translation>No hay registro del que hacer una página.</translation>
    </message>
    <message>
        <source>They stay in the recording and can be reviewed, but nobody has signed for them.</source>
        <translation>Quedan en el registro y se pueden revisar, pero nadie los ha firmado.</translation>
    </message>
    <message>
        <source>at %1</source>
        <translation>en %1</translation>
    </message>
    <message>
        <source>moved %1</source>
        <translation>movido %1</translation>
    </message>
    <message>
        <source>not judged: axle's type</source>
        <translation>no juzgado: tipo de eje</translation>
    </message>
    <message>
        <source>%1. The test goes on; its result says so.</source>
        <translation>%1. El ensayo sigue; su resultado lo dice.</translation>
    </message>
    <message>
        <source>Not recording</source>
        <translation>Sin registrar</translation>
    </message>
    <message>
        <source>Heldwheel measures; it does not declare a car safe or legal. The maker's manual, local rules and qualified people decide. One driven wheel in the air can still drive the car off its stand: engine off.</source>
        <translation>Heldwheel mide; no declara un coche seguro ni legal. Deciden el manual del fabricante, las normas locales y personas cualificadas. Una rueda motriz en el aire puede sacar el coche del caballete: motor parado.</translation>
    </message>
    <message>
        <source>Two torques are wanted: the one that breaks the clutch pack away, and the one that keeps it rotating. Each pull is caught by itself, corrected for the lever, and compared with your limit.</source>
        <translation>Se buscan dos pares: el que arranca el paquete de discos y el que lo mantiene girando. Cada tirón se capta solo, se corrige por la palanca y se compara con su límite.</translation>
    </message>
    <message>
        <source>Result: %1</source>
        <translation>Resultado: %1</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <translation>Copiar imagen</translation>
    </message>
    <message>
        <source>Save picture …</source>
        <translation>Guardar imagen …</translation>
    </message>
    <message>
        <source>Choose another folder</source>
        <translation>Elegir otra carpeta</translation>
    </message>
    <message>
        <source>Save elsewhere</source>
        <translation>Guardar en otro sitio</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Mostrar</translation>
    </message>
    <message>
        <source>Time (s)</source>
        <translation>Tiempo (s)</translation>
    </message>
    <message>
        <source>Steps of the test</source>
        <translation>Pasos del ensayo</translation>
    </message>
    <message>
        <source>On paper, sheet by sheet</source>
        <translation>En papel, hoja a hoja</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abierto</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Imprimir</translation>
    </message>
    <message>
        <source>Show in folder</source>
        <translation>Mostrar en la carpeta</translation>
    </message>
    <message>
        <source>With the program that this kind of file opens with</source>
        <translation>Con el programa con que se abre esta clase de archivo</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Escrito: %1</translation>
    </message>
    <message>
        <source>excluded by hand</source>
        <translation>excluido a mano</translation>
    </message>
    <message>
        <source>made before the new zero</source>
        <translation>hecho antes del cero nuevo</translation>
    </message>
    <message>
        <source>fill=2, shim=0.2</source>
        <translation>fill=2, shim=0,2</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Signo decimal</translation>
    </message>
    <message>
        <source>p. 12</source>
        <translation>pág. 12</translation>
    </message>
    <message>
        <source>Near the limit</source>
        <translation>Cerca del límite</translation>
    </message>
    <message>
        <source>15 s</source>
        <translation>15 s</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>firmado</translation>
    </message>
    <message>
        <source>%1 corrections</source>
        <translation>%1 correcciones</translation>
    </message>
    <message>
        <source>%1 correction</source>
        <translation>%1 corrección</translation>
    </message>
    <message>
        <source>a job</source>
        <translation>un trabajo</translation>
    </message>
    <message>
        <source>right wheel</source>
        <translation>rueda derecha</translation>
    </message>
    <message>
        <source>left wheel</source>
        <translation>rueda izquierda</translation>
    </message>
    <message>
        <source>Clutch plate</source>
        <translation>De discos</translation>
    </message>
    <message>
        <source>reading × %1</source>
        <translation>lectura × %1</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>Al menos %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>Como máximo %1</translation>
    </message>
    <message>
        <source>Rotating mean: %1</source>
        <translation>Par de giro medio: %1</translation>
    </message>
    <message>
        <source>Rotating maximum: %1</source>
        <translation>Par de giro máximo: %1</translation>
    </message>
    <message>
        <source>Breakaway: %1</source>
        <translation>Par de arranque: %1</translation>
    </message>
    <message>
        <source>Import a trace</source>
        <translation>Importar una traza</translation>
    </message>
    <message>
        <source>Other folder</source>
        <translation>Otra carpeta</translation>
    </message>
    <message>
        <source>Refresh</source>
        <translation>Actualizar</translation>
    </message>
    <message>
        <source>Look at recordings somewhere else</source>
        <translation>Ver registros en otro sitio</translation>
    </message>
    <message>
        <source>Read the folder again</source>
        <translation>Leer la carpeta otra vez</translation>
    </message>
    <message>
        <source>A CSV file from elsewhere: choose its columns and unit</source>
        <translation>Un CSV de otro sitio: elija columnas y unidad</translation>
    </message>
    <message>
        <source>three-way, guard band w = %1</source>
        <translation>tres resultados, banda de guarda w = %1</translation>
    </message>
    <message>
        <source>Transducer live</source>
        <translation>Transductor en vivo</translation>
    </message>
    <message>
        <source>Transducer not connected</source>
        <translation>Transductor no conectado</translation>
    </message>
    <message>
        <source>%1 readings/s</source>
        <translation>%1 lecturas/s</translation>
    </message>
    <message>
        <source>Recording: %1 readings</source>
        <translation>Registro: %1 lecturas</translation>
    </message>
    <message>
        <source>At the axle</source>
        <translation>En el eje</translation>
    </message>
    <message>
        <source>As shown</source>
        <translation>Como se muestra</translation>
    </message>
    <message>
        <source>The &amp;build</source>
        <translation>El m&amp;ontaje</translation>
    </message>
    <message>
        <source>What is in the axle: click a part, or add one behind it. Keep sides and order; never mix packs.</source>
        <translation>Qué hay en el eje: pulse una pieza o añada una detrás. Respete lados y orden; no mezcle nunca los paquetes.</translation>
    </message>
    <message>
        <source>Give the axle a tag first (What is known): its builds are kept under it, beside the recordings.</source>
        <translation>Dé primero una marca al eje (Lo que se sabe): con ella se guardan sus montajes, junto a los registros.</translation>
    </message>
    <message>
        <source>Why it was opened</source>
        <translation>Por qué se abrió</translation>
    </message>
    <message>
        <source>low breakaway</source>
        <translation>arranque bajo</translation>
    </message>
    <message>
        <source>Built by</source>
        <translation>Montado por</translation>
    </message>
    <message>
        <source>End play left</source>
        <translation>Juego axial izquierdo</translation>
    </message>
    <message>
        <source>End play right</source>
        <translation>Juego axial derecho</translation>
    </message>
    <message>
        <source>Preload spring</source>
        <translation>Muelle de precarga</translation>
    </message>
    <message>
        <source>two disc springs, face to face</source>
        <translation>dos muelles de disco, enfrentados</translation>
    </message>
    <message>
        <source>Its load on each pack</source>
        <translation>Su fuerza en cada paquete</translation>
    </message>
    <message>
        <source>Friction faces, outer diameter</source>
        <translation>Caras de fricción, diámetro exterior</translation>
    </message>
    <message>
        <source>Friction faces, inner diameter</source>
        <translation>Caras de fricción, diámetro interior</translation>
    </message>
    <message>
        <source>Preload torque at the pinion</source>
        <translation>Par de precarga en el piñón</translation>
    </message>
    <message>
        <source>Amount of oil</source>
        <translation>Cantidad de aceite</translation>
    </message>
    <message>
        <source>Its amount, or share of the fill</source>
        <translation>Su cantidad o parte del llenado</translation>
    </message>
    <message>
        <source>50 ml or 4 %</source>
        <translation>50 ml o 4 %</translation>
    </message>
    <message>
        <source>modifier B</source>
        <translation>modificador B</translation>
    </message>
    <message>
        <source>Discs soaked for</source>
        <translation>Discos en remojo durante</translation>
    </message>
    <message>
        <source>Soaked in</source>
        <translation>En remojo en</translation>
    </message>
    <message>
        <source>the oil that goes in</source>
        <translation>el aceite que se pone</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>plate 3 turned round</source>
        <translation>placa 3 dada la vuelta</translation>
    </message>
    <message>
        <source>Which build</source>
        <translation>Qué montaje</translation>
    </message>
    <message>
        <source>A new one</source>
        <translation>Uno nuevo</translation>
    </message>
    <message>
        <source>Thickness of the picked part</source>
        <translation>Espesor de la pieza elegida</translation>
    </message>
    <message>
        <source>Its state</source>
        <translation>Su estado</translation>
    </message>
    <message>
        <source>new, worn …</source>
        <translation>nueva, gastada …</translation>
    </message>
    <message>
        <source>+ friction disc</source>
        <translation>+ disco de fricción</translation>
    </message>
    <message>
        <source>+ steel plate</source>
        <translation>+ placa de acero</translation>
    </message>
    <message>
        <source>+ disc spring</source>
        <translation>+ muelle de disco</translation>
    </message>
    <message>
        <source>+ shim</source>
        <translation>+ suplemento</translation>
    </message>
    <message>
        <source>Inwards</source>
        <translation>Hacia dentro</translation>
    </message>
    <message>
        <source>Outwards</source>
        <translation>Hacia fuera</translation>
    </message>
    <message>
        <source>Change places, towards the side gear</source>
        <translation>Cambiar de sitio, hacia el planetario</translation>
    </message>
    <message>
        <source>Change places, away from the side gear</source>
        <translation>Cambiar de sitio, alejándose del planetario</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Quitar</translation>
    </message>
    <message>
        <source>Takes the picked part out. Delete</source>
        <translation>Quita la pieza elegida. Supr</translation>
    </message>
    <message>
        <source>Same on both sides</source>
        <translation>Igual en ambos lados</translation>
    </message>
    <message>
        <source>Builds the other side like this one</source>
        <translation>Monta el otro lado como este</translation>
    </message>
    <message>
        <source>Keep this build</source>
        <translation>Conservar</translation>
    </message>
    <message>
        <source>Spring, faces, pinion</source>
        <translation>Muelle, caras, piñón</translation>
    </message>
    <message>
        <source>Oil, modifier, soak</source>
        <translation>Aceite, modificador, remojo</translation>
    </message>
    <message>
        <source>Who, notes</source>
        <translation>Quién, notas</translation>
    </message>
    <message>
        <source>This build has faults; put them right first.</source>
        <translation>Este montaje tiene errores; corríjalos primero.</translation>
    </message>
    <message>
        <source>Kept as the build of %1 of axle %2.</source>
        <translation>Guardado como montaje del %1 del eje %2.</translation>
    </message>
    <message>
        <source>Nothing is otherwise than in %1.</source>
        <translation>Nada es distinto que en %1.</translation>
    </message>
    <message>
        <source>Case above, side gears below; not to scale</source>
        <translation>Caja arriba, planetarios abajo; sin escala</translation>
    </message>
    <message>
        <source>When it is tested again</source>
        <translation>Cuándo se vuelve a ensayar</translation>
    </message>
    <message>
        <source>Test it again every</source>
        <translation>Volver a ensayar cada</translation>
    </message>
    <message>
        <source>500 km, 4 weeks, 2 events, 10 figure-eights</source>
        <translation>500 km, 4 weeks, 2 events, 10 figure-eights (en inglés)</translation>
    </message>
    <message>
        <source>It has run (odometer, events, figure-eights)</source>
        <translation>Ha rodado (cuentakilómetros, pruebas, ochos)</translation>
    </message>
    <message>
        <source>53214 km, 1 event</source>
        <translation>53214 km, 1 event (en inglés)</translation>
    </message>
    <message>
        <source>Note it</source>
        <translation>Anotar</translation>
    </message>
    <message>
        <source>Kept with today's day</source>
        <translation>Se guarda con el día de hoy</translation>
    </message>
    <message>
        <source>The schedule is kept.</source>
        <translation>El plan queda guardado.</translation>
    </message>
    <message>
        <source>Noted with today's day.</source>
        <translation>Anotado con el día de hoy.</translation>
    </message>
    <message>
        <source>Axle %1 is due for a test: %2.</source>
        <translation>El eje %1 debe ensayarse: %2.</translation>
    </message>
    <message>
        <source>%1 more: heldwheel-read due lists them.</source>
        <translation>%1 más: heldwheel-read due los enumera.</translation>
    </message>
    <message>
        <source>No transducer at hand</source>
        <translation>Sin transductor a mano</translation>
    </message>
    <message>
        <source>A virtual transducer pulls for you on a simulated axle. All of it is marked as simulated.</source>
        <translation>Un transductor virtual tira por usted en un eje simulado. Todo queda marcado como simulado.</translation>
    </message>
    <message>
        <source>With a transducer</source>
        <translation>Con un transductor</translation>
    </message>
    <message>
        <source>Bluetooth, serial port or Modbus. Choose it once; it is kept in your list.</source>
        <translation>Bluetooth, puerto serie o Modbus. Elíjalo una vez; queda en su lista.</translation>
    </message>
    <message>
        <source>With a dial wrench</source>
        <translation>Con una llave de esfera</translation>
    </message>
    <message>
        <source>Read the dial and type it in: the same lever, interval and limit apply.</source>
        <translation>Lea la esfera y escriba el valor: valen la misma palanca, el mismo intervalo y el mismo límite.</translation>
    </message>
    <message>
        <source>Key 1</source>
        <translation>Tecla 1</translation>
    </message>
    <message>
        <source>Key 2</source>
        <translation>Tecla 2</translation>
    </message>
    <message>
        <source>Key 3</source>
        <translation>Tecla 3</translation>
    </message>
    <message>
        <source>Key 4</source>
        <translation>Tecla 4</translation>
    </message>
    <message>
        <source>Key 5</source>
        <translation>Tecla 5</translation>
    </message>
    <message>
        <source>two to three seconds</source>
        <translation>dos o tres segundos</translation>
    </message>
    <message>
        <source>your limit: at least this</source>
        <translation>su límite: al menos esto</translation>
    </message>
    <message>
        <source>Keep turning slowly</source>
        <translation>Siga girando despacio</translation>
    </message>
    <message>
        <source>B  breakaway torque</source>
        <translation>B  par de arranque</translation>
    </message>
    <message>
        <source>keep hold</source>
        <translation>no suelte</translation>
    </message>
    <message>
        <source>No vehicle yet</source>
        <translation>Aún sin vehículo</translation>
    </message>
    <message>
        <source>two turns for a steady value</source>
        <translation>dos vueltas para un valor estable</translation>
    </message>
    <message>
        <source>Ease off</source>
        <translation>Afloje</translation>
    </message>
    <message>
        <source>R  rotating torque</source>
        <translation>R  par de giro</translation>
    </message>
    <message>
        <source>Practice car</source>
        <translation>Coche de práctica</translation>
    </message>
    <message>
        <source>practice</source>
        <translation>práctica</translation>
    </message>
    <message>
        <source>Limit, %1</source>
        <translation>Límite, %1</translation>
    </message>
    <message>
        <source>invented for practice, no manual</source>
        <translation>inventado para practicar, sin manual</translation>
    </message>
    <message>
        <source>three-way, guard band w = U (95 %)</source>
        <translation>tres resultados, banda de guarda w = U (95 %)</translation>
    </message>
    <message>
        <source>Breakaway, 1 pull</source>
        <translation>Par de arranque, 1 tirón</translation>
    </message>
    <message>
        <source>battery low</source>
        <translation>batería baja</translation>
    </message>
    <message>
        <source>The disk is full: the recording could not be written further. %1 samples are safe on disk.</source>
        <translation>El disco está lleno: el registro no pudo seguir escribiéndose. %1 muestras están a salvo en el disco.</translation>
    </message>
    <message>
        <source>Transducer disconnected</source>
        <translation>Transductor desconectado</translation>
    </message>
    <message>
        <source>The transducer went away: unplugged or out of range. %1 samples are safe on disk.</source>
        <translation>El transductor se ha ido: desenchufado o fuera de alcance. %1 muestras están a salvo en el disco.</translation>
    </message>
    <message>
        <source>Heldwheel, far view</source>
        <translation>Heldwheel, vista de lejos</translation>
    </message>
    <message>
        <source>grade</source>
        <translation>grado</translation>
    </message>
    <message>
        <source>Photographs  ·  %1</source>
        <translation>Fotografías  ·  %1</translation>
    </message>
    <message>
        <source>sintered</source>
        <translation>sinterizado</translation>
    </message>
    <message>
        <source>Copied beside the recordings and named with their hash. Worth a picture: the axle's tag, how the wheel is held, the lever on the wheel, the odometer.</source>
        <translation>Se copian junto a los registros con su suma de comprobación en el nombre. Vale la pena fotografiar: la placa del eje, cómo se sujeta la rueda, la palanca en la rueda, el cuentakilómetros.</translation>
    </message>
    <message>
        <source>Leaves the file where it is</source>
        <translation>Deja el archivo donde está</translation>
    </message>
    <message>
        <source>What is &amp;known</source>
        <translation>Lo &amp;conocido</translation>
    </message>
    <message>
        <source>&amp;Count the turns</source>
        <translation>C&amp;ontar vueltas</translation>
    </message>
    <message>
        <source>&amp;Find the type</source>
        <translation>&amp;Hallar el tipo</translation>
    </message>
    <message>
        <source>Cone</source>
        <translation>De conos</translation>
    </message>
    <message>
        <source>Ramp plate</source>
        <translation>De discos con rampas</translation>
    </message>
    <message>
        <source>Helical or worm gear</source>
        <translation>De engranajes helicoidales o sinfín</translation>
    </message>
    <message>
        <source>Viscous or fluid coupling</source>
        <translation>Acoplamiento viscoso o fluido</translation>
    </message>
    <message>
        <source>Automatic locker</source>
        <translation>De bloqueo automático</translation>
    </message>
    <message>
        <source>Governor-locking with light plates</source>
        <translation>De bloqueo centrífugo con discos ligeros</translation>
    </message>
    <message>
        <source>Welded or spool</source>
        <translation>Soldado o rígido</translation>
    </message>
    <message>
        <source>Ratio by turns</source>
        <translation>Relación por vueltas</translation>
    </message>
    <message>
        <source>Type by what the wheels do</source>
        <translation>Tipo por lo que hacen las ruedas</translation>
    </message>
    <message>
        <source>A low number on the wrong type means nothing. Five things to try tell what it is.</source>
        <translation>Un número bajo en un tipo equivocado no significa nada. Cinco pruebas dicen cuál es.</translation>
    </message>
    <message>
        <source>&amp;Propshaft turns</source>
        <translation>Vueltas del á&amp;rbol</translation>
    </message>
    <message>
        <source>&amp;Left wheel</source>
        <translation>Rueda &amp;izquierda</translation>
    </message>
    <message>
        <source>&amp;Right wheel</source>
        <translation>Rueda &amp;derecha</translation>
    </message>
    <message>
        <source>Propshaft turns</source>
        <translation>Vueltas del árbol</translation>
    </message>
    <message>
        <source>Left wheel</source>
        <translation>Rueda izquierda</translation>
    </message>
    <message>
        <source>Right wheel</source>
        <translation>Rueda derecha</translation>
    </message>
    <message>
        <source>%1: one less, or backwards. Key Down</source>
        <translation>%1: una menos, o hacia atrás. Tecla Abajo</translation>
    </message>
    <message>
        <source>%1: 1/8 more. Key Shift+Up</source>
        <translation>%1: 1/8 más. Teclas Mayús+Arriba</translation>
    </message>
    <message>
        <source>%1: 1/2 more. Key Shift+Up</source>
        <translation>%1: 1/2 más. Teclas Mayús+Arriba</translation>
    </message>
    <message>
        <source>%1: one more. Key Up</source>
        <translation>%1: una más. Tecla Arriba</translation>
    </message>
    <message>
        <source>%1: held, so 0</source>
        <translation>%1: sujeta, así que 0</translation>
    </message>
    <message>
        <source>0 if held</source>
        <translation>0 si está sujeta</translation>
    </message>
    <message>
        <source>Ratio %1, between %2 and %3 by counting error</source>
        <translation>Relación %1, entre %2 y %3 por el error de conteo</translation>
    </message>
    <message>
        <source>One wheel held: %1 (half count: the other wheel was held)</source>
        <translation>Una rueda sujeta: %1 (media cuenta: la otra rueda estaba sujeta)</translation>
    </message>
    <message>
        <source>Count a&amp;new</source>
        <translation>Contar de &amp;nuevo</translation>
    </message>
    <message>
        <source>Empties the counts; the card keeps what it has</source>
        <translation>Vacía las cuentas; la ficha conserva lo que tiene</translation>
    </message>
    <message>
        <source>Not settled: %1 ratios lie inside. Count %2 wheel turns to tell the two nearest ratios apart.</source>
        <translation>Sin decidir: caben %1 relaciones. Cuente %2 vueltas de rueda para distinguir las dos más próximas.</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Tomar</translation>
    </message>
    <message>
        <source>%1 as counted</source>
        <translation>%1 según el conteo</translation>
    </message>
    <message>
        <source>If the other wheel was not held but turned with it, the same counts would mean %1; if it turned backwards, more than %2. Count both wheels. Tags can be wrong after a swap; counted teeth, ring ÷ pinion, are exact.</source>
        <translation>Si la otra rueda no estaba sujeta sino que giró a la vez, la misma cuenta sería %1; si giró al revés, más de %2. Cuente ambas ruedas. Las placas pueden estar mal tras un cambio; los dientes contados, corona ÷ piñón, son exactos.</translation>
    </message>
    <message>
        <source>Propshaft is read</source>
        <translation>El árbol se lee a</translation>
    </message>
    <message>
        <source>Wheels are read</source>
        <translation>Las ruedas se leen a</translation>
    </message>
    <message>
        <source>Compare with these only</source>
        <translation>Comparar solo con estas</translation>
    </message>
    <message>
        <source>3.08  3.55  41/11; empty for the usual ones</source>
        <translation>3.08  3.55  41/11; vacío para las usuales</translation>
    </message>
    <message>
        <source>Name of this list</source>
        <translation>Nombre de esta lista</translation>
    </message>
    <message>
        <source>rear axles of the club</source>
        <translation>ejes traseros del club</translation>
    </message>
    <message>
        <source>Saved ratio lists</source>
        <translation>Listas de relaciones guardadas</translation>
    </message>
    <message>
        <source>Saved fixtures</source>
        <translation>Utillajes guardados</translation>
    </message>
    <message>
        <source>Saved limits</source>
        <translation>Límites guardados</translation>
    </message>
    <message>
        <source>Saved transducers</source>
        <translation>Transductores guardados</translation>
    </message>
    <message>
        <source>Keep it in the list under its name</source>
        <translation>Guardarlo en la lista con su nombre</translation>
    </message>
    <message>
        <source>Read it from a TOML file</source>
        <translation>Leerlo de un archivo TOML</translation>
    </message>
    <message>
        <source>Write it to a TOML file for somebody else</source>
        <translation>Escribirlo en un archivo TOML para otra persona</translation>
    </message>
    <message>
        <source>Remove the picked one from the list</source>
        <translation>Quitar de la lista el elegido</translation>
    </message>
    <message>
        <source>The list is as it was before</source>
        <translation>La lista está como antes</translation>
    </message>
    <message>
        <source>Ask this again</source>
        <translation>Preguntar otra vez</translation>
    </message>
    <message>
        <source>What the answers fit</source>
        <translation>Con qué encajan las respuestas</translation>
    </message>
    <message>
        <source>Not tried</source>
        <translation>Sin probar</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Qué es</translation>
    </message>
    <message>
        <source>It turns the same way</source>
        <translation>Gira en el mismo sentido</translation>
    </message>
    <message>
        <source>It turns the other way</source>
        <translation>Gira en sentido contrario</translation>
    </message>
    <message>
        <source>A few degrees</source>
        <translation>Unos grados</translation>
    </message>
    <message>
        <source>Very much harder than in neutral</source>
        <translation>Mucho más duro que en punto muerto</translation>
    </message>
    <message>
        <source>The other turns the opposite way, easily</source>
        <translation>La otra gira al revés, con facilidad</translation>
    </message>
    <message>
        <source>Hardly any resistance, drag only</source>
        <translation>Casi sin resistencia, solo arrastre</translation>
    </message>
    <message>
        <source>A firm, even drag once it has broken away</source>
        <translation>Tras el arranque, una resistencia firme y pareja</translation>
    </message>
    <message>
        <source>A light, even drag</source>
        <translation>Una resistencia ligera y pareja</translation>
    </message>
    <message>
        <source>It gets stiffer with speed, or with time; no breakaway</source>
        <translation>Se endurece con la velocidad o con el tiempo; sin arranque</translation>
    </message>
    <message>
        <source>Free one way, locks when moved back</source>
        <translation>Libre en un sentido, se bloquea al volver</translation>
    </message>
    <message>
        <source>It cannot be turned</source>
        <translation>No se puede girar</translation>
    </message>
    <message>
        <source>Both brakes are free</source>
        <translation>Ambos frenos están libres</translation>
    </message>
    <message>
        <source>%1 or %2</source>
        <translation>%1 o %2</translation>
    </message>
    <message>
        <source>What was seen fits: %1.</source>
        <translation>Lo visto encaja con: %1.</translation>
    </message>
    <message>
        <source>Nothing fits what was seen.</source>
        <translation>Nada encaja con lo visto.</translation>
    </message>
    <message>
        <source>This torque says nothing about it</source>
        <translation>Este par no dice nada de él</translation>
    </message>
    <message>
        <source>Next to each other</source>
        <translation>Contiguos</translation>
    </message>
    <message>
        <source>One stud between</source>
        <translation>Con un espárrago en medio</translation>
    </message>
    <message>
        <source>Within or outside only if the whole guarded interval lies on one side of the limit; otherwise too close to call; risk of a wrong within or outside below 2.5 %.</source>
        <translation>Dentro o fuera solo si todo el intervalo con banda de guarda queda a un lado del límite; si no, demasiado justo; riesgo de un dentro o fuera erróneo inferior al 2,5 %.</translation>
    </message>
    <message>
        <source>Choose one</source>
        <translation>Elija uno</translation>
    </message>
    <message>
        <source>For one without a description: listen while it is loaded and unloaded</source>
        <translation>Para uno sin descripción: escuchar mientras se carga y descarga</translation>
    </message>
    <message>
        <source>Ports</source>
        <translation>Puertos</translation>
    </message>
    <message>
        <source>Lists serial ports; opens none and sends nothing</source>
        <translation>Lista los puertos serie; no abre ninguno ni envía nada</translation>
    </message>
    <message>
        <source>Listens a few seconds; connects to nothing</source>
        <translation>Escucha unos segundos; no se conecta a nada</translation>
    </message>
    <message>
        <source>Ask it</source>
        <translation>Preguntarle</translation>
    </message>
    <message>
        <source>Connects once to the Bluetooth device to learn what it sends</source>
        <translation>Se conecta una vez al dispositivo Bluetooth para saber qué envía</translation>
    </message>
    <message>
        <source>Serial number: %1</source>
        <translation>Número de serie: %1</translation>
    </message>
    <message>
        <source>Capacity: %1</source>
        <translation>Capacidad: %1</translation>
    </message>
    <message>
        <source>Accuracy: ± %1 % of reading, 95 %</source>
        <translation>Exactitud: ± %1 % de la lectura, 95 %</translation>
    </message>
    <message>
        <source>%1 (an invented example)</source>
        <translation>%1 (un ejemplo inventado)</translation>
    </message>
    <message>
        <source>/dev/ttyUSB1, COM4, or as found above</source>
        <translation>/dev/ttyUSB1, COM4 o como se halló arriba</translation>
    </message>
    <message>
        <source>/dev/ttyUSB0, COM3, or an address</source>
        <translation>/dev/ttyUSB0, COM3 o una dirección</translation>
    </message>
    <message>
        <source>It tells the wheel's angle, at its own times beside the torque's. If it goes away the test goes on.</source>
        <translation>Da el ángulo de la rueda, con sus propios tiempos junto a los del par. Si se va, el ensayo sigue.</translation>
    </message>
    <message>
        <source>with angle</source>
        <translation>con ángulo</translation>
    </message>
    <message>
        <source>Where is it?</source>
        <translation>¿Dónde está?</translation>
    </message>
    <message>
        <source>Text, frames and Bluetooth packets are understood. Nothing is sent unless you type a question and agree.</source>
        <translation>Se entienden texto, tramas y paquetes Bluetooth. No se envía nada salvo que escriba una pregunta y acepte.</translation>
    </message>
    <message>
        <source>Connected by</source>
        <translation>Conectado por</translation>
    </message>
    <message>
        <source>Serial port</source>
        <translation>Puerto serie</translation>
    </message>
    <message>
        <source>A captured file</source>
        <translation>Un archivo capturado</translation>
    </message>
    <message>
        <source>Choose a port</source>
        <translation>Elija un puerto</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Velocidad</translation>
    </message>
    <message>
        <source>Find it out</source>
        <translation>Averiguarla</translation>
    </message>
    <message>
        <source>%1 baud</source>
        <translation>%1 baudios</translation>
    </message>
    <message>
        <source>Question, only for one that answers when asked</source>
        <translation>Pregunta, solo para uno que responde</translation>
    </message>
    <message>
        <source>leave empty: nothing is sent</source>
        <translation>dejar vacío: no se envía nada</translation>
    </message>
    <message>
        <source>Listen</source>
        <translation>Escuchar</translation>
    </message>
    <message>
        <source>Read it</source>
        <translation>Leer</translation>
    </message>
    <message>
        <source>Learn a transducer</source>
        <translation>Aprender un transductor</translation>
    </message>
    <message>
        <source>Load and unload it now</source>
        <translation>Cárguelo y descárguelo ahora</translation>
    </message>
    <message>
        <source>On a wheel: engine off and key away, car on stands, wheels on the floor chocked, brakes released.</source>
        <translation>En la rueda: motor parado y llave fuera, coche sobre caballetes, ruedas en el suelo calzadas, frenos sueltos.</translation>
    </message>
    <message>
        <source>1   Leave it unloaded for two seconds.</source>
        <translation>1   Déjelo sin carga dos segundos.</translation>
    </message>
    <message>
        <source>2   Load it clockwise, seen from outside the car, as far as usual. Ease it off.</source>
        <translation>2   Cárguelo en sentido horario, visto desde fuera, hasta lo habitual. Afloje.</translation>
    </message>
    <message>
        <source>3   Load it the other way. Ease it off.</source>
        <translation>3   Cárguelo al revés. Afloje.</translation>
    </message>
    <message>
        <source>Its unit is not sent. %1 readings; %2 % of what came is understood</source>
        <translation>No envía su unidad. %1 lecturas; se entiende el %2 % de lo recibido</translation>
    </message>
    <message>
        <source>As it came: %1</source>
        <translation>Tal como llegó: %1</translation>
    </message>
    <message>
        <source>Push the lever and see which number moves with it, then press that number.</source>
        <translation>Empuje la palanca, vea qué número se mueve con ella y pulse ese número.</translation>
    </message>
    <message>
        <source>%1 moves now %2</source>
        <translation>%1 se mueve %2</translation>
    </message>
    <message>
        <source>Take this number as the torque</source>
        <translation>Tomar este número como el par</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Finished loading</source>
        <translation>Carga terminada</translation>
    </message>
    <message>
        <source>Is this right? Then name it</source>
        <translation>¿Es correcto? Entonces póngale nombre</translation>
    </message>
    <message>
        <source>Its torque is</source>
        <translation>Su par es</translation>
    </message>
    <message>
        <source>number %1, %2: %3 to %4</source>
        <translation>número %1, %2: %3 a %4</translation>
    </message>
    <message>
        <source>%1 % of what came is understood</source>
        <translation>se entiende el %1 % de lo recibido</translation>
    </message>
    <message>
        <source>lines end with CRLF</source>
        <translation>las líneas acaban en CRLF</translation>
    </message>
    <message>
        <source>number %1 of a line hardly moved (%2 to %3): no torque</source>
        <translation>el número %1 de la línea apenas se movió (%2 a %3): no es par</translation>
    </message>
    <message>
        <source>a counter that steps by %1 and wraps at %2</source>
        <translation>un contador que avanza en pasos de %1 y vuelve a empezar en %2</translation>
    </message>
    <message>
        <source>%1 readings a second: taken as %2</source>
        <translation>%1 lecturas por segundo: se toman %2</translation>
    </message>
    <message>
        <source>readings have a sign</source>
        <translation>las lecturas llevan signo</translation>
    </message>
    <message>
        <source>Not clear: %1</source>
        <translation>No está claro: %1</translation>
    </message>
    <message>
        <source>the unit is not sent</source>
        <translation>no envía la unidad</translation>
    </message>
    <message>
        <source>long transducer, bench 2</source>
        <translation>transductor largo, banco 2</translation>
    </message>
    <message>
        <source>Unit it shows</source>
        <translation>Unidad que muestra</translation>
    </message>
    <message>
        <source>Read it off the device</source>
        <translation>Leerla en el aparato</translation>
    </message>
    <message>
        <source>Sign, by the first load</source>
        <translation>Signo, según la primera carga</translation>
    </message>
    <message>
        <source>Capacity, in its unit</source>
        <translation>Capacidad, en su unidad</translation>
    </message>
    <message>
        <source>Accuracy, % of reading (95 %)</source>
        <translation>Exactitud, % de la lectura (95 %)</translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation>Número de serie</translation>
    </message>
    <message>
        <source>as on its label</source>
        <translation>como en su placa</translation>
    </message>
    <message>
        <source>Give it a name, to find it again. Read the unit off the device.</source>
        <translation>Póngale un nombre para encontrarlo. Lea la unidad en el aparato.</translation>
    </message>
    <message>
        <source>Save and use it</source>
        <translation>Guardar y usar</translation>
    </message>
    <message>
        <source>Check it with known weights</source>
        <translation>Comprobar con pesos conocidos</translation>
    </message>
    <message>
        <source>Clamp the transducer's far end so that it cannot turn. Tie the weight to the arm, hang it a hand's width above the floor, and stand clear of it: no toes, knees or hands below.</source>
        <translation>Sujete el otro extremo del transductor para que no pueda girar. Ate el peso al brazo, cuélguelo a un palmo del suelo y apártese: ni pies, ni rodillas, ni manos debajo.</translation>
    </message>
    <message>
        <source>Fit the arm level now, with nothing on it: its own weight then does not count.</source>
        <translation>Monte ahora el brazo horizontal, sin nada: así su propio peso no cuenta.</translation>
    </message>
    <message>
        <source>Check %1</source>
        <translation>Comprobar %1</translation>
    </message>
    <message>
        <source>Calibrate %1, a bare amplifier, by two loads</source>
        <translation>Calibrar %1, un amplificador sin ajuste, con dos cargas</translation>
    </message>
    <message>
        <source>workshop transducer</source>
        <translation>transductor del taller</translation>
    </message>
    <message>
        <source>Mass with its hanger</source>
        <translation>Masa con su gancho</translation>
    </message>
    <message>
        <source>Second mass, if any</source>
        <translation>Segunda masa, si la hay</translation>
    </message>
    <message>
        <source>Third mass, if any</source>
        <translation>Tercera masa, si la hay</translation>
    </message>
    <message>
        <source>%1 kg in all</source>
        <translation>%1 kg en total</translation>
    </message>
    <message>
        <source>Drive to hanging point</source>
        <translation>Del cuadrado al punto de cuelgue</translation>
    </message>
    <message>
        <source>The length is good to ±</source>
        <translation>La longitud vale a ±</translation>
    </message>
    <message>
        <source>empty: 0.5 mm</source>
        <translation>vacío: 0,5 mm</translation>
    </message>
    <message>
        <source>The masses are good to ±</source>
        <translation>Las masas valen a ±</translation>
    </message>
    <message>
        <source>5 g; empty: exact</source>
        <translation>5 g; vacío: exactas</translation>
    </message>
    <message>
        <source>Latitude, for gravity</source>
        <translation>Latitud, para la gravedad</translation>
    </message>
    <message>
        <source>Height above sea level</source>
        <translation>Altura sobre el nivel del mar</translation>
    </message>
    <message>
        <source>Or gravity itself, m/s²</source>
        <translation>O la gravedad misma, m/s²</translation>
    </message>
    <message>
        <source>9.807; empty: standard</source>
        <translation>9.807; vacío: normal</translation>
    </message>
    <message>
        <source>The weight turns it</source>
        <translation>El peso lo gira</translation>
    </message>
    <message>
        <source>Loads</source>
        <translation>Cargas</translation>
    </message>
    <message>
        <source>Up and down again</source>
        <translation>Subir y volver a bajar</translation>
    </message>
    <message>
        <source>Up only</source>
        <translation>Solo subir</translation>
    </message>
    <message>
        <source>Permitted error, if no certificate</source>
        <translation>Error admisible, si no hay certificado</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Empezar</translation>
    </message>
    <message>
        <source>Dead-weight check</source>
        <translation>Comprobación con pesas</translation>
    </message>
    <message>
        <source>Hang and take off</source>
        <translation>Colgar y descolgar</translation>
    </message>
    <message>
        <source>Stand clear of the weight. No toes below it.</source>
        <translation>Apártese del peso. Ningún pie debajo.</translation>
    </message>
    <message>
        <source>Hang %1 in all</source>
        <translation>Cuelgue %1 en total</translation>
    </message>
    <message>
        <source>Hang %1</source>
        <translation>Cuelgue %1</translation>
    </message>
    <message>
        <source>Step %1 of %2. It measures by itself once the reading has moved and is still.</source>
        <translation>Paso %1 de %2. Mide por sí solo cuando la lectura se ha movido y está quieta.</translation>
    </message>
    <message>
        <source>Step %1 of %2. Still: measuring …</source>
        <translation>Paso %1 de %2. Quieto: midiendo …</translation>
    </message>
    <message>
        <source>Step %1 of %2. Press Measure now when it hangs still; a mean is then taken.</source>
        <translation>Paso %1 de %2. Pulse Medir ahora cuando cuelgue quieto; entonces se promedia.</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nada</translation>
    </message>
    <message>
        <source>Hands off</source>
        <translation>Manos fuera</translation>
    </message>
    <message>
        <source>Keep it with serial number %1 in the register: later recordings name it.</source>
        <translation>Guardarlo con el número de serie %1 en el registro: los registros posteriores lo nombran.</translation>
    </message>
    <message>
        <source>Weigh again</source>
        <translation>Pesar otra vez</translation>
    </message>
    <message>
        <source>Save this check</source>
        <translation>Guardar esta comprobación</translation>
    </message>
    <message>
        <source>torque in N·m = reading × %1</source>
        <translation>par en N·m = lectura × %1</translation>
    </message>
    <message>
        <source>scale known to ± %1 % (95 %)</source>
        <translation>escala conocida a ± %1 % (95 %)</translation>
    </message>
    <message>
        <source>Keep it as a description of its own in your list, read only, dated, and used from now on. Then check it.</source>
        <translation>Guárdelo como descripción propia en su lista, de solo lectura, fechada y en uso desde ahora. Después compruébelo.</translation>
    </message>
    <message>
        <source>It sends nothing unless it is asked</source>
        <translation>No envía nada si no se le pregunta</translation>
    </message>
    <message>
        <source>A request for Modbus registers (%1) of device %2 every %3 s would be sent to %4.</source>
        <translation>Cada %3 s se enviaría a %4 una petición de los registros Modbus (%1) del aparato %2.</translation>
    </message>
    <message>
        <source>%1 every %2 s would be sent to %3.</source>
        <translation>Cada %2 s se enviaría %1 a %3.</translation>
    </message>
    <message>
        <source>Byte by byte, in hexadecimal digits</source>
        <translation>Byte a byte, en hexadecimal</translation>
    </message>
    <message>
        <source>as text: %1</source>
        <translation>como texto: %1</translation>
    </message>
    <message>
        <source>Nothing else is sent. It begins when the test does and goes on until it ends, also after a cable comes back. Your consent covers only this description as it stands and this port, and is forgotten when the window closes.</source>
        <translation>No se envía nada más. Empieza con el ensayo y sigue hasta que acaba, también si un cable vuelve. Su consentimiento vale solo para esta descripción tal como está y este puerto, y se olvida al cerrar la ventana.</translation>
    </message>
    <message>
        <source>Where this description comes from</source>
        <translation>De dónde viene esta descripción</translation>
    </message>
    <message>
        <source>Comes with this program: the invented example %1. It fits your device only by chance.</source>
        <translation>Viene con este programa: el ejemplo inventado %1. Solo encaja con su aparato por casualidad.</translation>
    </message>
    <message>
        <source>In its writer's own words: %1</source>
        <translation>En palabras de su autor: %1</translation>
    </message>
    <message>
        <source>On another device the same bytes may switch, set or erase something. Agree only if this transducer, and nothing else, is at the other end.</source>
        <translation>En otro aparato los mismos bytes pueden conmutar, ajustar o borrar algo. Acepte solo si al otro extremo está este transductor y nada más.</translation>
    </message>
    <message>
        <source>Send nothing</source>
        <translation>No enviar nada</translation>
    </message>
    <message>
        <source>Yes, send this</source>
        <translation>Sí, enviar esto</translation>
    </message>
    <message>
        <source>Only if you know this device</source>
        <translation>Solo si conoce este aparato</translation>
    </message>
    <message>
        <source>Ask this transducer?</source>
        <translation>¿Preguntar a este transductor?</translation>
    </message>
    <message>
        <source>Fixture, limit, job: written beside the recording, with a reason</source>
        <translation>Utillaje, límite, trabajo: escritos junto al registro, con un motivo</translation>
    </message>
    <message>
        <source>Limit: %1</source>
        <translation>Límite: %1</translation>
    </message>
    <message>
        <source>In gear: %1</source>
        <translation>Con marcha: %1</translation>
    </message>
    <message>
        <source>In neutral: %1</source>
        <translation>En punto muerto: %1</translation>
    </message>
    <message>
        <source>simulated: must never be filed as a test</source>
        <translation>simulado: nunca debe archivarse como ensayo</translation>
    </message>
    <message>
        <source>%1, %2, %3 pulls</source>
        <translation>%1, %2, %3 tirones</translation>
    </message>
    <message>
        <source>This answer, or a table of all recordings found</source>
        <translation>Esta respuesta, o una tabla de todos los registros hallados</translation>
    </message>
    <message>
        <source>%1 against %2: %3 (95 %: %4), lower.</source>
        <translation>%1 frente a %2: %3 (95 %: %4), menor.</translation>
    </message>
    <message>
        <source>%1 against %2: %3 (95 %: %4), higher.</source>
        <translation>%1 frente a %2: %3 (95 %: %4), mayor.</translation>
    </message>
    <message>
        <source>Copy this table</source>
        <translation>Copiar esta tabla</translation>
    </message>
    <message>
        <source>▼ lower</source>
        <translation>▼ menor</translation>
    </message>
    <message>
        <source>▲ higher</source>
        <translation>▲ mayor</translation>
    </message>
    <message>
        <source>Dunnett, jointly 95 %</source>
        <translation>Dunnett, conjuntamente 95 %</translation>
    </message>
    <message>
        <source>not shown (90 %: %1 to %2)</source>
        <translation>no demostrado (90 %: %1 a %2)</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 y %2</translation>
    </message>
    <message>
        <source>Group</source>
        <translation>Grupo</translation>
    </message>
    <message>
        <source>Difference (%1)</source>
        <translation>Diferencia (%1)</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Método</translation>
    </message>
    <message>
        <source>Same within ± %1</source>
        <translation>Igual dentro de ± %1</translation>
    </message>
    <message>
        <source>vehicle, shim, 2026-05 …</source>
        <translation>vehículo, suplemento, 2026-05 …</translation>
    </message>
    <message>
        <source>What is compared</source>
        <translation>Qué se compara</translation>
    </message>
    <message>
        <source>Tag that identifies a fill or build</source>
        <translation>Etiqueta que identifica un llenado o montaje</translation>
    </message>
    <message>
        <source>fill</source>
        <translation>llenado</translation>
    </message>
    <message>
        <source>day</source>
        <translation>día</translation>
    </message>
    <message>
        <source>modifier, %</source>
        <translation>modificador, %</translation>
    </message>
    <message>
        <source>oil temperature, °C</source>
        <translation>temperatura del aceite, °C</translation>
    </message>
    <message>
        <source>shim, mm</source>
        <translation>suplemento, mm</translation>
    </message>
    <message>
        <source>modifier %1 %</source>
        <translation>modificador %1 %</translation>
    </message>
    <message>
        <source>distance %1 km</source>
        <translation>distancia %1 km</translation>
    </message>
    <message>
        <source>oil temperature %1 °C</source>
        <translation>temperatura del aceite %1 °C</translation>
    </message>
    <message>
        <source>A shim is 0 to %1 thick</source>
        <translation>Un suplemento tiene de 0 a %1 de espesor</translation>
    </message>
    <message>
        <source>Must be 0 to %1</source>
        <translation>Debe estar entre 0 y %1</translation>
    </message>
    <message>
        <source>shim, in</source>
        <translation>suplemento, in</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Pulgadas</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Milímetros</translation>
    </message>
    <message>
        <source>Lengths in</source>
        <translation>Longitudes en</translation>
    </message>
    <message>
        <source>cycles</source>
        <translation>ciclos</translation>
    </message>
    <message>
        <source>distance, km</source>
        <translation>distancia, km</translation>
    </message>
    <message>
        <source>event</source>
        <translation>evento</translation>
    </message>
    <message>
        <source>Choose a tag</source>
        <translation>Elija una etiqueta</translation>
    </message>
    <message>
        <source>the first (%1)</source>
        <translation>el primero (%1)</translation>
    </message>
    <message>
        <source>the first</source>
        <translation>el primero</translation>
    </message>
    <message>
        <source>Every group with every other</source>
        <translation>Cada grupo con todos los demás</translation>
    </message>
    <message>
        <source>no blocks</source>
        <translation>sin bloques</translation>
    </message>
    <message>
        <source>Breakaway (%1)</source>
        <translation>Par de arranque (%1)</translation>
    </message>
    <message>
        <source>Rotating (%1)</source>
        <translation>En giro (%1)</translation>
    </message>
    <message>
        <source>%1 fills, %2 pulls</source>
        <translation>%1 llenados, %2 tirones</translation>
    </message>
    <message>
        <source>1 fill, %1 pulls</source>
        <translation>1 llenado, %1 tirones</translation>
    </message>
    <message>
        <source>This answer (CSV, JSON)</source>
        <translation>Esta respuesta (CSV, JSON)</translation>
    </message>
    <message>
        <source>All recordings found: one row per recording</source>
        <translation>Todos los registros hallados: una fila por registro</translation>
    </message>
    <message>
        <source>All recordings found: one row per pull</source>
        <translation>Todos los registros hallados: una fila por tirón</translation>
    </message>
    <message>
        <source>For %1: %2 (95 %: %3 to %4).</source>
        <translation>Para %1: %2 (95 %: %3 a %4).</translation>
    </message>
    <message>
        <source>The interval holds the scatter from fill to fill; what all fills share (transducer, lever, zero) is not in it.</source>
        <translation>El intervalo contiene la dispersión entre llenados; lo común a todos (transductor, palanca, cero) no está en él.</translation>
    </message>
    <message>
        <source>At %1: expect %2 (the next single fill, 95 %: %3 to %4).</source>
        <translation>En %1: se esperan %2 (el próximo llenado, 95 %: %3 a %4).</translation>
    </message>
    <message>
        <source>Per %1 of %2: %3 (95 %: %4 to %5), no trend is shown.</source>
        <translation>Por %1 de %2: %3 (95 %: %4 a %5), no se muestra ninguna tendencia.</translation>
    </message>
    <message>
        <source>Per %1 of %2: %3 (95 %: %4 to %5), a trend is shown.</source>
        <translation>Por %1 de %2: %3 (95 %: %4 a %5), se muestra una tendencia.</translation>
    </message>
    <message>
        <source>Change per %1 of %2</source>
        <translation>Cambio por %1 de %2</translation>
    </message>
    <message>
        <source>%1, %2 fills, least squares</source>
        <translation>%1, %2 llenados, mínimos cuadrados</translation>
    </message>
    <message>
        <source>Scatter about the line</source>
        <translation>Dispersión en torno a la recta</translation>
    </message>
    <message>
        <source>one further fill</source>
        <translation>un llenado más</translation>
    </message>
    <message>
        <source>At %1, the line</source>
        <translation>En %1, la recta</translation>
    </message>
    <message>
        <source>the mean there</source>
        <translation>la media ahí</translation>
    </message>
    <message>
        <source>At %1, next fill</source>
        <translation>En %1, próximo llenado</translation>
    </message>
    <message>
        <source>a single one</source>
        <translation>uno solo</translation>
    </message>
    <message>
        <source>different operators: %1</source>
        <translation>operarios distintos: %1</translation>
    </message>
    <message>
        <source>different axles within %1</source>
        <translation>ejes distintos dentro de %1</translation>
    </message>
    <message>
        <source>it has no tag '%1'</source>
        <translation>no tiene la etiqueta '%1'</translation>
    </message>
    <message>
        <source>%1, pull at %2 s</source>
        <translation>%1, tirón en %2 s</translation>
    </message>
    <message>
        <source>These groups cannot be compared: %1</source>
        <translation>Estos grupos no se pueden comparar: %1</translation>
    </message>
    <message>
        <source>Compare like with like: narrow the search until only such tests are left. If you know why these may stand side by side all the same, say so; the reason is kept with the answer.</source>
        <translation>Compare lo semejante: estreche la búsqueda hasta que solo queden esos ensayos. Si sabe por qué pueden ponerse juntos, dígalo; el motivo queda con la respuesta.</translation>
    </message>
    <message>
        <source>Settled since cycle %1.</source>
        <translation>Asentado desde el ciclo %1.</translation>
    </message>
    <message>
        <source>%1 per ten cycles (99.7 %: %2 to %3); settled means wholly within ±1 %.</source>
        <translation>%1 por diez ciclos (99,7 %: %2 a %3); asentado significa por completo dentro de ±1 %.</translation>
    </message>
    <message>
        <source>  too few yet</source>
        <translation>  aún muy pocos</translation>
    </message>
    <message>
        <source>  cannot be shown yet</source>
        <translation>  aún no se puede demostrar</translation>
    </message>
    <message>
        <source>  still moving</source>
        <translation>  aún cambia</translation>
    </message>
    <message>
        <source>● settled</source>
        <translation>● asentado</translation>
    </message>
    <message>
        <source>after %1</source>
        <translation>tras %1</translation>
    </message>
    <message>
        <source>% per ten</source>
        <translation>% por diez</translation>
    </message>
    <message>
        <source>99.7 % interval</source>
        <translation>intervalo del 99,7 %</translation>
    </message>
    <message>
        <source>Judged then</source>
        <translation>Juzgado entonces</translation>
    </message>
    <message>
        <source>vehicle, axle, side</source>
        <translation>vehículo, eje, lado</translation>
    </message>
    <message>
        <source>settled since %1</source>
        <translation>asentado desde %1</translation>
    </message>
    <message>
        <source>judged: last %1</source>
        <translation>juzgado: últimos %1</translation>
    </message>
    <message>
        <source>The first %1 jobs fall by %2 % themselves: no reference level; %3</source>
        <translation>Los primeros %1 trabajos ya bajan un %2 %: no hay nivel de referencia; %3</translation>
    </message>
    <message>
        <source>reference level %1, scatter %2, from the first %3 jobs.</source>
        <translation>nivel de referencia %1, dispersión %2, de los primeros %3 trabajos.</translation>
    </message>
    <message>
        <source>in band, reference level</source>
        <translation>en la banda, nivel de referencia</translation>
    </message>
    <message>
        <source>in band</source>
        <translation>en la banda</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Fecha</translation>
    </message>
    <message>
        <source>Band</source>
        <translation>Banda</translation>
    </message>
    <message>
        <source>band, lower edge</source>
        <translation>banda, borde inferior</translation>
    </message>
    <message>
        <source>band, upper edge</source>
        <translation>banda, borde superior</translation>
    </message>
    <message>
        <source>weighted average</source>
        <translation>media ponderada</translation>
    </message>
    <message>
        <source>reference level</source>
        <translation>nivel de referencia</translation>
    </message>
    <message>
        <source>%1 fills of each group, %2 in all.</source>
        <translation>%1 llenados de cada grupo, %2 en total.</translation>
    </message>
    <message>
        <source>At a scatter of %1 from fill to fill a difference of %2 would be detected, compared within blocks, with %3 % probability.</source>
        <translation>Con una dispersión de %1 entre llenados, una diferencia de %2, comparada dentro de bloques, se detectaría con una probabilidad del %3 %.</translation>
    </message>
    <message>
        <source>these recordings, by %1</source>
        <translation>estos registros, por %1</translation>
    </message>
    <message>
        <source>Power (%)</source>
        <translation>Potencia (%)</translation>
    </message>
    <message>
        <source>%1 fills</source>
        <translation>%1 llenados</translation>
    </message>
    <message>
        <source>Fills per group</source>
        <translation>Llenados por grupo</translation>
    </message>
    <message>
        <source>One reading is good to %1 (95 %), whoever takes it; repeats scatter more than operators differ.</source>
        <translation>Una lectura vale a %1 (95 %), la tome quien la tome; las repeticiones dispersan más de lo que difieren los operarios.</translation>
    </message>
    <message>
        <source>Two readings of one axle by one operator differ by more than %1 only once in twenty.</source>
        <translation>Dos lecturas de un eje por un operario difieren en más de %1 solo una vez de cada veinte.</translation>
    </message>
    <message>
        <source>Same operator, repeated</source>
        <translation>El mismo operario, repetido</translation>
    </message>
    <message>
        <source>Operator to operator</source>
        <translation>De operario a operario</translation>
    </message>
    <message>
        <source>reproducibility</source>
        <translation>reproducibilidad</translation>
    </message>
    <message>
        <source>Measurement, total</source>
        <translation>Medición, total</translation>
    </message>
    <message>
        <source>%1 % of the whole spread</source>
        <translation>%1 % de la dispersión total</translation>
    </message>
    <message>
        <source>Axle to axle</source>
        <translation>De eje a eje</translation>
    </message>
    <message>
        <source>distinct levels it can tell apart: %1</source>
        <translation>niveles que puede distinguir: %1</translation>
    </message>
    <message>
        <source>Overall</source>
        <translation>En conjunto</translation>
    </message>
    <message>
        <source>mean %1</source>
        <translation>media %1</translation>
    </message>
    <message>
        <source>Off the axle's mean (%1)</source>
        <translation>Desviación de la media del eje (%1)</translation>
    </message>
    <message>
        <source>%1 reads %2 lower than %3 (95 %: %4), %5 axles.</source>
        <translation>%1 lee %2 menos que %3 (95 %: %4), %5 ejes.</translation>
    </message>
    <message>
        <source>%1 reads %2 higher than %3 (95 %: %4), %5 axles.</source>
        <translation>%1 lee %2 más que %3 (95 %: %4), %5 ejes.</translation>
    </message>
    <message>
        <source>In 95 % of axles a single difference lies between %1 and %2.</source>
        <translation>En el 95 % de los ejes una diferencia aislada queda entre %1 y %2.</translation>
    </message>
    <message>
        <source>Mean difference</source>
        <translation>Diferencia media</translation>
    </message>
    <message>
        <source>95 % interval of the mean</source>
        <translation>intervalo del 95 % de la media</translation>
    </message>
    <message>
        <source>Single differences</source>
        <translation>Diferencias aisladas</translation>
    </message>
    <message>
        <source>limits of agreement, 95 % of axles</source>
        <translation>límites de concordancia, 95 % de los ejes</translation>
    </message>
    <message>
        <source>Mean of both, %1</source>
        <translation>Media de ambos, %1</translation>
    </message>
    <message>
        <source>%1 of %2 recordings read</source>
        <translation>%1 de %2 registros leídos</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parar</translation>
    </message>
    <message>
        <source>What is read is kept</source>
        <translation>Lo leído se conserva</translation>
    </message>
    <message>
        <source>Choose the tag that makes the groups.</source>
        <translation>Elija la etiqueta que forma los grupos.</translation>
    </message>
    <message>
        <source>Compare groups: before and after a rebuild, left and right, one oil against another.</source>
        <translation>Comparar grupos: antes y después de una revisión, izquierda y derecha, un aceite con otro.</translation>
    </message>
    <message>
        <source>1. Give the recordings a tag in Review, such as  oil=B, fill=2, or use what the job card states: side, vehicle.</source>
        <translation>1. Dé a los registros una etiqueta en Revisar, p. ej.  oil=B, fill=2, o use lo que dice la ficha: lado, vehículo.</translation>
    </message>
    <message>
        <source>2. Choose on the left which recordings, what is compared, and which tag makes the groups.</source>
        <translation>2. Elija a la izquierda qué registros, qué se compara y qué etiqueta forma los grupos.</translation>
    </message>
    <message>
        <source>A fill (drain, flush, fill, run in) is one point, however many pulls it has: pulls of one fill belong together.</source>
        <translation>Un llenado (vaciar, enjuagar, llenar, rodar) es un punto, tenga los tirones que tenga: los tirones de un llenado van juntos.</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Seguir</translation>
    </message>
    <message>
        <source>Stopping after the recordings that are being read …</source>
        <translation>Se detiene tras los registros que se están leyendo …</translation>
    </message>
    <message>
        <source>The photograph that was removed last</source>
        <translation>La última fotografía quitada</translation>
    </message>
    <message>
        <source>Time is in</source>
        <translation>Tiempo en</translation>
    </message>
    <message>
        <source>Readings a second</source>
        <translation>Lecturas por segundo</translation>
    </message>
    <message>
        <source>500 Hz</source>
        <translation>500 Hz</translation>
    </message>
    <message>
        <source>Torque or force</source>
        <translation>Par o fuerza</translation>
    </message>
    <message>
        <source>It is in</source>
        <translation>Unidad</translation>
    </message>
    <message>
        <source>One count is</source>
        <translation>Una cuenta es</translation>
    </message>
    <message>
        <source>Angle of the wheel</source>
        <translation>Ángulo de la rueda</translation>
    </message>
    <message>
        <source>Sheet</source>
        <translation>Hoja</translation>
    </message>
    <message>
        <source>of a workbook</source>
        <translation>de un libro</translation>
    </message>
    <message>
        <source>Radius, axle to hook</source>
        <translation>Radio, del eje al gancho</translation>
    </message>
    <message>
        <source>Looking at what came …</source>
        <translation>Mirando lo recibido …</translation>
    </message>
    <message>
        <source>Choose the file first.</source>
        <translation>Elija antes el archivo.</translation>
    </message>
    <message>
        <source>The comma</source>
        <translation>La coma</translation>
    </message>
    <message>
        <source>Thousands</source>
        <translation>Millares</translation>
    </message>
    <message>
        <source>Reading = number sent ×</source>
        <translation>Lectura = número enviado ×</translation>
    </message>
    <message>
        <source>Lines of the torque begin with</source>
        <translation>Las líneas del par empiezan por</translation>
    </message>
    <message>
        <source>as shown above</source>
        <translation>como se muestra arriba</translation>
    </message>
    <message>
        <source>Layout of a line</source>
        <translation>Formato de una línea</translation>
    </message>
    <message>
        <source>{torque:8}{temperature:6}</source>
        <translation>{torque:8}{temperature:6}</translation>
    </message>
    <message>
        <source>Choose the file</source>
        <translation>Elegir el archivo</translation>
    </message>
    <message>
        <source>Bytes as they came, captured by a terminal program</source>
        <translation>Bytes tal como llegaron, capturados por un programa de terminal</translation>
    </message>
    <message>
        <source>Nothing came yet.</source>
        <translation>Aún no ha llegado nada.</translation>
    </message>
    <message>
        <source>Measure it again</source>
        <translation>Medirlo otra vez</translation>
    </message>
    <message>
        <source>Takes the last step back</source>
        <translation>Deshace el último paso</translation>
    </message>
    <message>
        <source>SIMULATED: practice, never kept as a check</source>
        <translation>SIMULADO: práctica, nunca se guarda como comprobación</translation>
    </message>
    <message>
        <source>10 kg</source>
        <translation>10 kg</translation>
    </message>
    <message>
        <source>410 m</source>
        <translation>410 m</translation>
    </message>
    <message>
        <source>folded</source>
        <translation>plegado</translation>
    </message>
    <message>
        <source>Copied</source>
        <translation>Copiado</translation>
    </message>
    <message>
        <source>Limit, breakaway</source>
        <translation>Límite, par de arranque</translation>
    </message>
    <message>
        <source>Chart over time</source>
        <translation>Gráfico en el tiempo</translation>
    </message>
    <message>
        <source>Opens Compare</source>
        <translation>Abre Comparar</translation>
    </message>
    <message>
        <source>Pull %1, %2: amplitude %3 at the axle, highest %4 after its start. A hint only; it may be: %5</source>
        <translation>Tirón %1, %2: amplitud %3 en el eje, máximo %4 tras su comienzo. Solo un indicio; puede ser: %5</translation>
    </message>
    <message>
        <source>Pull %1, %2: amplitude %3 at the sensor, highest %4 after its start. A hint only; it may be: %5</source>
        <translation>Tirón %1, %2: amplitud %3 en el transductor, máximo %4 tras su comienzo. Solo un indicio; puede ser: %5</translation>
    </message>
    <message>
        <source>Pull %1, %2, the lever's stated weight taken off: amplitude %3, highest %4 after its start</source>
        <translation>Tirón %1, %2, descontado el peso indicado de la palanca: amplitud %3, máximo %4 tras su comienzo</translation>
    </message>
    <message>
        <source>every second turn of the wheel below %1</source>
        <translation>cada dos vueltas de la rueda, menos de %1</translation>
    </message>
    <message>
        <source>every second turn of the wheel takes %1</source>
        <translation>cada dos vueltas de la rueda necesita %1</translation>
    </message>
    <message>
        <source>once per turn of the wheel below %1</source>
        <translation>una vez por vuelta de la rueda, menos de %1</translation>
    </message>
    <message>
        <source>once per turn of the wheel takes %1</source>
        <translation>una vez por vuelta de la rueda necesita %1</translation>
    </message>
    <message>
        <source>twice per turn of the wheel below %1</source>
        <translation>dos veces por vuelta de la rueda, menos de %1</translation>
    </message>
    <message>
        <source>twice per turn of the wheel takes %1</source>
        <translation>dos veces por vuelta de la rueda necesita %1</translation>
    </message>
    <message>
        <source>once per turn of the pinion below %1</source>
        <translation>una vez por vuelta del piñón, menos de %1</translation>
    </message>
    <message>
        <source>once per turn of the pinion takes %1</source>
        <translation>una vez por vuelta del piñón necesita %1</translation>
    </message>
    <message>
        <source>twice per turn of the pinion below %1</source>
        <translation>dos veces por vuelta del piñón, menos de %1</translation>
    </message>
    <message>
        <source>twice per turn of the pinion takes %1</source>
        <translation>dos veces por vuelta del piñón necesita %1</translation>
    </message>
    <message>
        <source>%1, or the pinion's turn, which takes %2 turns to tell from it</source>
        <translation>%1 o la vuelta del piñón, que solo se distingue de ello en %2 vueltas</translation>
    </message>
    <message>
        <source>every second turn of the wheel repeats like another</source>
        <translation>cada dos vueltas de la rueda se repite como otra</translation>
    </message>
    <message>
        <source>once per turn of the wheel repeats like another</source>
        <translation>una vez por vuelta de la rueda se repite como otra</translation>
    </message>
    <message>
        <source>twice per turn of the wheel repeats like another</source>
        <translation>dos veces por vuelta de la rueda se repite como otra</translation>
    </message>
    <message>
        <source>once per turn of the pinion repeats like another</source>
        <translation>una vez por vuelta del piñón se repite como otra</translation>
    </message>
    <message>
        <source>twice per turn of the pinion repeats like another</source>
        <translation>dos veces por vuelta del piñón se repite como otra</translation>
    </message>
    <message>
        <source>%1, or the pinion's turn, which is just as long</source>
        <translation>%1 o la vuelta del piñón, que es igual de larga</translation>
    </message>
    <message>
        <source>What repeats per turn cannot be told: the longest pull has %1 steady turns, %2 would do</source>
        <translation>Lo que se repite por vuelta no se distingue: el tirón más largo tiene %1 vueltas uniformes, bastarían %2</translation>
    </message>
    <message>
        <source>What repeats per turn of the wheel stands under Details.</source>
        <translation>Lo que se repite por vuelta de la rueda está en Detalles.</translation>
    </message>
    <message>
        <source>What such a unit is tried for instead, after the maker's manual:</source>
        <translation>Qué se prueba en una unidad así, según el manual del fabricante:</translation>
    </message>
    <message>
        <source>number %1: %2 to %3</source>
        <translation>número %1: de %2 a %3</translation>
    </message>
    <message>
        <source>number %1</source>
        <translation>número %1</translation>
    </message>
    <message>
        <source>stood still, and is kept as a number of its own: %1</source>
        <translation>no cambió y queda como número propio: %1</translation>
    </message>
    <message>
        <source>Frequency band</source>
        <translation>Banda de frecuencias</translation>
    </message>
    <message>
        <source>50-800 Hz</source>
        <translation>50-800 Hz</translation>
    </message>
    <message>
        <source>Axle tag, for its chatter index</source>
        <translation>Placa del eje, para el índice de vibración</translation>
    </message>
    <message>
        <source>Open a recording</source>
        <translation>Abrir un registro</translation>
    </message>
    <message>
        <source>WAV, or a table with an acceleration</source>
        <translation>WAV, o una tabla con una aceleración</translation>
    </message>
    <message>
        <source>Compare with …</source>
        <translation>Comparar con …</translation>
    </message>
    <message>
        <source>The drive before, same microphone and place</source>
        <translation>El recorrido anterior, mismo micrófono y lugar</translation>
    </message>
    <message>
        <source>Chatter on the road</source>
        <translation>Vibración en marcha</translation>
    </message>
    <message>
        <source>Chatter on the road …</source>
        <translation>Vibración en marcha …</translation>
    </message>
    <message>
        <source>Before driving</source>
        <translation>Antes de conducir</translation>
    </message>
    <message>
        <source>Sound or acceleration</source>
        <translation>Sonido o aceleración</translation>
    </message>
    <message>
        <source>Level against time</source>
        <translation>Nivel en el tiempo</translation>
    </message>
    <message>
        <source>Level, %1</source>
        <translation>Nivel, %1</translation>
    </message>
    <message>
        <source>Events that stand out: %1</source>
        <translation>Eventos que destacan: %1</translation>
    </message>
    <message>
        <source>an event begins</source>
        <translation>empieza un evento</translation>
    </message>
    <message>
        <source>Tyres alike?</source>
        <translation>¿Neumáticos iguales?</translation>
    </message>
    <message>
        <source>Compare the tyres</source>
        <translation>Comparar los neumáticos</translation>
    </message>
    <message>
        <source>Circumference, left</source>
        <translation>Circunferencia, izquierda</translation>
    </message>
    <message>
        <source>Circumference, right</source>
        <translation>Circunferencia, derecha</translation>
    </message>
    <message>
        <source>Standard uncertainty of each</source>
        <translation>Incertidumbre típica de cada una</translation>
    </message>
    <message>
        <source>Road speed, km/h</source>
        <translation>Velocidad en carretera, km/h</translation>
    </message>
    <message>
        <source>1985 mm</source>
        <translation>1985 mm</translation>
    </message>
    <message>
        <source>Inertia from a spin-down</source>
        <translation>Inercia de un giro libre</translation>
    </message>
    <message>
        <source>Inertia from a spin-down …</source>
        <translation>Inercia de un giro libre …</translation>
    </message>
    <message>
        <source>Drag of the same parts</source>
        <translation>Arrastre de las mismas piezas</translation>
    </message>
    <message>
        <source>Its standard uncertainty; without: 5 %</source>
        <translation>Su incertidumbre típica; sin ella: 5 %</translation>
    </message>
    <message>
        <source>Torque that will be measured</source>
        <translation>Par que se medirá</translation>
    </message>
    <message>
        <source>In which unit? Write %1 or %2</source>
        <translation>¿En qué unidad? Escriba %1 o %2</translation>
    </message>
    <message>
        <source>No value at the axle</source>
        <translation>Ningún valor en el eje</translation>
    </message>
    <message>
        <source>Engineer's page with a second test …</source>
        <translation>Página del técnico con una segunda prueba …</translation>
    </message>
    <message>
        <source>Choose the signed second test</source>
        <translation>Elija la segunda prueba firmada</translation>
    </message>
    <message>
        <source>Choose one recording: the test that is confirmed.</source>
        <translation>Elija un registro: la prueba que se confirma.</translation>
    </message>
</context>
</TS>
