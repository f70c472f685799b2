<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Heldwheel</name>
    <message>
        <source>Everything is saved in %1.</source>
        <translation>Alles ist in %1 gespeichert.</translation>
    </message>
    <message>
        <source>Test</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>Review</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleichen</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>SIMULATED</source>
        <translation>SIMULIERT</translation>
    </message>
    <message>
        <source>What this page shows was made by the virtual transducer: never file it as a test</source>
        <translation>Was diese Seite zeigt, stammt vom virtuellen Aufnehmer: nie als Prüfung ablegen</translation>
    </message>
    <message>
        <source>View</source>
        <translation>Anzeige</translation>
    </message>
    <message>
        <source>Colours, text size, decimal mark, sounds, what appears on reports</source>
        <translation>Farben, Textgröße, Dezimalzeichen, Töne, was auf Berichten steht</translation>
    </message>
    <message>
        <source>Light or dark</source>
        <translation>Hell oder dunkel</translation>
    </message>
    <message>
        <source>Decimal comma</source>
        <translation>Dezimalkomma</translation>
    </message>
    <message>
        <source>Sounds</source>
        <translation>Töne</translation>
    </message>
    <message>
        <source>On every report …</source>
        <translation>Auf jedem Bericht …</translation>
    </message>
    <message>
        <source>How to make the test (F1)</source>
        <translation>So wird geprüft (F1)</translation>
    </message>
    <message>
        <source>Ctrl+%1</source>
        <translation>Strg+%1</translation>
    </message>
    <message>
        <source>Text %1 %</source>
        <translation>Text %1 %</translation>
    </message>
    <message>
        <source>Done: next check</source>
        <translation>Erledigt: nächster Punkt</translation>
    </message>
    <message>
        <source>Done: last check</source>
        <translation>Erledigt: letzter Punkt</translation>
    </message>
    <message>
        <source>Taking the zero</source>
        <translation>Null wird genommen</translation>
    </message>
    <message>
        <source>Hands off: nothing may touch the lever</source>
        <translation>Hände weg: nichts darf den Hebel berühren</translation>
    </message>
    <message>
        <source>Turn slowly</source>
        <translation>Langsam drehen</translation>
    </message>
    <message>
        <source>It is caught by itself; without it: Without drag</source>
        <translation>Er wird von selbst erfasst; ohne ihn: Ohne Schleppmoment</translation>
    </message>
    <message>
        <source>Pull %1 of %2</source>
        <translation>Zug %1 von %2</translation>
    </message>
    <message>
        <source>Pulls are caught by themselves: just pull</source>
        <translation>Züge werden von selbst erfasst: einfach ziehen</translation>
    </message>
    <message>
        <source>Sign and finish</source>
        <translation>Unterschreiben und abschließen</translation>
    </message>
    <message>
        <source>Enter who did the test</source>
        <translation>Eintragen, wer geprüft hat</translation>
    </message>
    <message>
        <source>Next test</source>
        <translation>Nächste Prüfung</translation>
    </message>
    <message>
        <source>Start the test</source>
        <translation>Prüfung beginnen</translation>
    </message>
    <message>
        <source>Still missing: %1</source>
        <translation>Es fehlt noch: %1</translation>
    </message>
    <message>
        <source>Connect again</source>
        <translation>Wieder verbinden</translation>
    </message>
    <message>
        <source>Waiting for the transducer</source>
        <translation>Warten auf den Aufnehmer</translation>
    </message>
    <message>
        <source>Transducer: %1</source>
        <translation>Aufnehmer: %1</translation>
    </message>
    <message>
        <source>I have read them: go on</source>
        <translation>Gelesen: weiter</translation>
    </message>
    <message>
        <source>All checked: go on</source>
        <translation>Alles geprüft: weiter</translation>
    </message>
    <message>
        <source>Take the zero</source>
        <translation>Null nehmen</translation>
    </message>
    <message>
        <source>Drag is measured: go on</source>
        <translation>Schleppmoment ist gemessen: weiter</translation>
    </message>
    <message>
        <source>Enough pulls: zero again</source>
        <translation>Genug Züge: Null noch einmal</translation>
    </message>
    <message>
        <source>Finish this pull</source>
        <translation>Diesen Zug beenden</translation>
    </message>
    <message>
        <source>The lever is loaded</source>
        <translation>Der Hebel ist belastet</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>one row per recording</source>
        <translation>eine Zeile je Aufzeichnung</translation>
    </message>
    <message>
        <source>one row per pull</source>
        <translation>eine Zeile je Zug</translation>
    </message>
    <message>
        <source>Load smoothly until it slips</source>
        <translation>Gleichmäßig belasten, bis es rutscht</translation>
    </message>
    <message>
        <source>STOP: transducer's rated torque reached</source>
        <translation>STOPP: Nenndrehmoment des Aufnehmers erreicht</translation>
    </message>
    <message>
        <source>Ease off: near the transducer's rated torque</source>
        <translation>Nachlassen: nahe am Nenndrehmoment des Aufnehmers</translation>
    </message>
    <message>
        <source>Load more slowly</source>
        <translation>Langsamer belasten</translation>
    </message>
    <message>
        <source>Keep turning</source>
        <translation>Weiterdrehen</translation>
    </message>
    <message>
        <source>Keep turning only if the wheel moves; otherwise stop</source>
        <translation>Nur weiterdrehen, wenn sich das Rad bewegt; sonst aufhören</translation>
    </message>
    <message>
        <source>Nothing turns: ease the load off, keep hold</source>
        <translation>Nichts dreht sich: Last wegnehmen, Hebel festhalten</translation>
    </message>
    <message>
        <source>Let it rest</source>
        <translation>Ruhen lassen</translation>
    </message>
    <message>
        <source>Ready: pull when you like</source>
        <translation>Bereit: ziehen, wann Sie wollen</translation>
    </message>
    <message>
        <source>Enough: ease the load off, keep hold of the lever</source>
        <translation>Genug: Last langsam wegnehmen, Hebel festhalten</translation>
    </message>
    <message>
        <source>Differences</source>
        <translation>Unterschiede</translation>
    </message>
    <message>
        <source>Groups</source>
        <translation>Gruppen</translation>
    </message>
    <message>
        <source>one stud</source>
        <translation>ein Bolzen</translation>
    </message>
    <message>
        <source>hub centre</source>
        <translation>Nabenmitte</translation>
    </message>
    <message>
        <source>Stud circle</source>
        <translation>Lochkreis</translation>
    </message>
    <message>
        <source>Stud-to-stud distance</source>
        <translation>Abstand von Bolzen zu Bolzen</translation>
    </message>
    <message>
        <source>67.2 mm or 2 5/8 in</source>
        <translation>67,2 mm oder 2 5/8 in</translation>
    </message>
    <message>
        <source>Lever, drive to hand</source>
        <translation>Hebel, Antrieb bis Hand</translation>
    </message>
    <message>
        <source>Lever angle from stud line</source>
        <translation>Hebelwinkel zur Bolzenlinie</translation>
    </message>
    <message>
        <source>0° = in line</source>
        <translation>0° = in einer Linie</translation>
    </message>
    <message>
        <source>Drive off the wheel's centre</source>
        <translation>Antrieb neben der Radmitte</translation>
    </message>
    <message>
        <source>Radius of the force</source>
        <translation>Radius der Kraft</translation>
    </message>
    <message>
        <source>Cord diameter</source>
        <translation>Schnurdurchmesser</translation>
    </message>
    <message>
        <source>Pull, degrees off square</source>
        <translation>Zug, Grad neben rechtwinklig</translation>
    </message>
    <message>
        <source>Lever above level at the start</source>
        <translation>Hebel über waagerecht am Anfang</translation>
    </message>
    <message>
        <source>Weight of the lever</source>
        <translation>Gewicht des Hebels</translation>
    </message>
    <message>
        <source>1.2 kg, if known</source>
        <translation>1,2 kg, falls bekannt</translation>
    </message>
    <message>
        <source>Its centre of mass from the drive</source>
        <translation>Sein Schwerpunkt vom Antrieb</translation>
    </message>
    <message>
        <source>force at radius</source>
        <translation>Kraft am Radius</translation>
    </message>
    <message>
        <source>dead weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>Safety checks</source>
        <translation>Sicherheit</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Null</translation>
    </message>
    <message>
        <source>Drag</source>
        <translation>Schleppmoment</translation>
    </message>
    <message>
        <source>Hold the wheel</source>
        <translation>Rad halten</translation>
    </message>
    <message>
        <source>Pulls</source>
        <translation>Züge</translation>
    </message>
    <message>
        <source>Zero again</source>
        <translation>Null noch einmal</translation>
    </message>
    <message>
        <source>Sign</source>
        <translation>Unterschreiben</translation>
    </message>
    <message>
        <source>to come</source>
        <translation>kommt noch</translation>
    </message>
    <message>
        <source>A4, 210 × 297 mm</source>
        <translation>A4, 210 × 297 mm</translation>
    </message>
    <message>
        <source>Letter, 8.5 × 11 inches</source>
        <translation>Letter, 8,5 × 11 Zoll</translation>
    </message>
    <message>
        <source>rotating mean</source>
        <translation>Drehmoment, Mittel</translation>
    </message>
    <message>
        <source>rotating maximum</source>
        <translation>Drehmoment, Maximum</translation>
    </message>
    <message>
        <source>Breakaway</source>
        <translation>Losbrechmoment</translation>
    </message>
    <message>
        <source>Rotating mean</source>
        <translation>Drehmoment in Bewegung, Mittel</translation>
    </message>
    <message>
        <source>Rotating maximum</source>
        <translation>Drehmoment in Bewegung, Maximum</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>andere Seite</translation>
    </message>
    <message>
        <source>Other wheel held</source>
        <translation>Anderes Rad gehalten</translation>
    </message>
    <message>
        <source>Case held</source>
        <translation>Gehäuse gehalten</translation>
    </message>
    <message>
        <source>Both wheels free</source>
        <translation>Beide Räder frei</translation>
    </message>
    <message>
        <source>held side</source>
        <translation>gehaltene Seite</translation>
    </message>
    <message>
        <source>Lever on one stud</source>
        <translation>Hebel auf einem Bolzen</translation>
    </message>
    <message>
        <source>Cross-bar over two studs</source>
        <translation>Querträger über zwei Bolzen</translation>
    </message>
    <message>
        <source>Lever at the hub's centre</source>
        <translation>Hebel in Nabenmitte</translation>
    </message>
    <message>
        <source>T-bar, pushed at both ends</source>
        <translation>T-Griff, an beiden Enden gedrückt</translation>
    </message>
    <message>
        <source>Force at a radius</source>
        <translation>Kraft an einem Radius</translation>
    </message>
    <message>
        <source>Cord wound on a drum</source>
        <translation>Schnur auf einer Trommel</translation>
    </message>
    <message>
        <source>Transducer in line with the axle</source>
        <translation>Aufnehmer in der Achslinie</translation>
    </message>
    <message>
        <source>Weight hung on a lever</source>
        <translation>Gewicht an einem Hebel</translation>
    </message>
    <message>
        <source>Transducer on the held side</source>
        <translation>Aufnehmer auf der gehaltenen Seite</translation>
    </message>
    <message>
        <source>+ is clockwise</source>
        <translation>+ ist im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>− is clockwise</source>
        <translation>− ist im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>It shows no sign</source>
        <translation>Er zeigt kein Vorzeichen</translation>
    </message>
    <message>
        <source>both ways</source>
        <translation>beide Richtungen</translation>
    </message>
    <message>
        <source>which number is the torque</source>
        <translation>welche Zahl das Drehmoment ist</translation>
    </message>
    <message>
        <source>what one count is worth</source>
        <translation>was ein Schritt wert ist</translation>
    </message>
    <message>
        <source>what the comma means</source>
        <translation>was das Komma bedeutet</translation>
    </message>
    <message>
        <source>what sets thousands apart</source>
        <translation>was Tausender trennt</translation>
    </message>
    <message>
        <source>how the lines of the torque begin</source>
        <translation>wie die Zeilen des Drehmoments beginnen</translation>
    </message>
    <message>
        <source>the layout of a line</source>
        <translation>der Aufbau einer Zeile</translation>
    </message>
    <message>
        <source>which characteristic it is</source>
        <translation>welches Merkmal es ist</translation>
    </message>
    <message>
        <source>nothing, but load it the other way as well</source>
        <translation>nichts, aber auch anders herum belasten</translation>
    </message>
    <message>
        <source>Curve</source>
        <translation>Kurve</translation>
    </message>
    <message>
        <source>Figure</source>
        <translation>Zahl</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>Der Reihe nach</translation>
    </message>
    <message>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Components</source>
        <translation>Anteile</translation>
    </message>
    <message>
        <source>Scatter</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>SD, %1</source>
        <translation>Standardabweichung, %1</translation>
    </message>
    <message>
        <source>Share of variance</source>
        <translation>Anteil der Varianz</translation>
    </message>
    <message>
        <source>Meaning</source>
        <translation>Bedeutung</translation>
    </message>
    <message>
        <source>Variance</source>
        <translation>Varianz</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Ablesungen</translation>
    </message>
    <message>
        <source>Axle</source>
        <translation>Achse</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>Prüfer</translation>
    </message>
    <message>
        <source>Repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Figures</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Interval</source>
        <translation>Intervall</translation>
    </message>
    <message>
        <source>Pairs</source>
        <translation>Paare</translation>
    </message>
    <message>
        <source>Difference</source>
        <translation>Unterschied</translation>
    </message>
    <message>
        <source>half width</source>
        <translation>halbe Breite</translation>
    </message>
    <message>
        <source>Show a difference</source>
        <translation>Einen Unterschied zeigen</translation>
    </message>
    <message>
        <source>Show that nothing changed</source>
        <translation>Zeigen, dass sich nichts geändert hat</translation>
    </message>
    <message>
        <source>Know a mean</source>
        <translation>Ein Mittel kennen</translation>
    </message>
    <message>
        <source>Order of tests</source>
        <translation>Reihenfolge der Prüfungen</translation>
    </message>
    <message>
        <source>Block (a day)</source>
        <translation>Block (ein Tag)</translation>
    </message>
    <message>
        <source>Fill to test</source>
        <translation>Zu prüfende Füllung</translation>
    </message>
    <message>
        <source>Virtual transducer</source>
        <translation>Virtueller Aufnehmer</translation>
    </message>
    <message>
        <source>in gear</source>
        <translation>im Gang</translation>
    </message>
    <message>
        <source>in neutral</source>
        <translation>im Leerlauf</translation>
    </message>
    <message>
        <source>%1%2. Pulls are recorded, but no result is given: put the type right on the Axle card, or a reason to judge it all the same.</source>
        <translation>%1%2. Züge werden aufgezeichnet, aber es gibt kein Ergebnis: Typ auf der Karte Achse berichtigen, oder einen Grund angeben, trotzdem zu urteilen.</translation>
    </message>
    <message>
        <source>The kind of test has changed, so some checks are asked again. Pulls made before stay in the list: exclude those that were made otherwise.</source>
        <translation>Die Art der Prüfung hat sich geändert, darum wird einiges noch einmal gefragt. Frühere Züge bleiben in der Liste: schließen Sie aus, was anders gemacht wurde.</translation>
    </message>
    <message>
        <source>The zero has moved since the start. The pulls are kept, but their result may be off by as much: warm the transducer up, take a new zero and repeat.</source>
        <translation>Die Null hat sich seit Beginn verschoben. Die Züge bleiben, aber ihr Ergebnis kann um so viel falsch sein: Aufnehmer warm werden lassen, neue Null nehmen, wiederholen.</translation>
    </message>
    <message>
        <source>Vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>blue hill-climb car</source>
        <translation>blaues Bergrennauto</translation>
    </message>
    <message>
        <source>Odometer</source>
        <translation>Kilometerstand</translation>
    </message>
    <message>
        <source>as read, 53,214 miles</source>
        <translation>wie abgelesen, 53.214 Meilen</translation>
    </message>
    <message>
        <source>Job number</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Tested by</source>
        <translation>Geprüft von</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Öltemperatur</translation>
    </message>
    <message>
        <source>Oil</source>
        <translation>Öl</translation>
    </message>
    <message>
        <source>Friction modifier</source>
        <translation>Reibungszusatz</translation>
    </message>
    <message>
        <source>kind and amount</source>
        <translation>Art und Menge</translation>
    </message>
    <message>
        <source>Complaint, remarks</source>
        <translation>Beanstandung, Bemerkungen</translation>
    </message>
    <message>
        <source>chatters in slow turns</source>
        <translation>rattert in engen Kurven</translation>
    </message>
    <message>
        <source>Dates, place and people</source>
        <translation>Tage, Ort und Personen</translation>
    </message>
    <message>
        <source>How it was held and turned</source>
        <translation>Wie gehalten und gedreht wurde</translation>
    </message>
    <message>
        <source>Oil in detail</source>
        <translation>Öl im Einzelnen</translation>
    </message>
    <message>
        <source>The axle's history</source>
        <translation>Vorgeschichte der Achse</translation>
    </message>
    <message>
        <source>Received on</source>
        <translation>Eingegangen am</translation>
    </message>
    <message>
        <source>Workshop</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>as on the report</source>
        <translation>wie auf dem Bericht</translation>
    </message>
    <message>
        <source>Done at</source>
        <translation>Durchgeführt in</translation>
    </message>
    <message>
        <source>if not in the workshop</source>
        <translation>falls nicht in der Werkstatt</translation>
    </message>
    <message>
        <source>Witness</source>
        <translation>Zeuge</translation>
    </message>
    <message>
        <source>Held by</source>
        <translation>Gehalten durch</translation>
    </message>
    <message>
        <source>strap to the floor</source>
        <translation>Gurt zum Boden</translation>
    </message>
    <message>
        <source>Car stands on</source>
        <translation>Auto steht auf</translation>
    </message>
    <message>
        <source>two stands under the axle</source>
        <translation>zwei Böcken unter der Achse</translation>
    </message>
    <message>
        <source>Tyre</source>
        <translation>Reifen</translation>
    </message>
    <message>
        <source>size, pressure, circumference</source>
        <translation>Größe, Druck, Umfang</translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation>Rad</translation>
    </message>
    <message>
        <source>Fitted</source>
        <translation>Montiert</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Ab</translation>
    </message>
    <message>
        <source>Brakes</source>
        <translation>Bremsen</translation>
    </message>
    <message>
        <source>Free</source>
        <translation>Frei</translation>
    </message>
    <message>
        <source>Not free</source>
        <translation>Nicht frei</translation>
    </message>
    <message>
        <source>Brake pads</source>
        <translation>Bremsbeläge</translation>
    </message>
    <message>
        <source>Out</source>
        <translation>Ausgebaut</translation>
    </message>
    <message>
        <source>Parking brake</source>
        <translation>Feststellbremse</translation>
    </message>
    <message>
        <source>Propshaft</source>
        <translation>Kardanwelle</translation>
    </message>
    <message>
        <source>Turned before the pulls</source>
        <translation>Vor den Zügen gedreht</translation>
    </message>
    <message>
        <source>Speed, turns a minute</source>
        <translation>Tempo, Umdrehungen je Minute</translation>
    </message>
    <message>
        <source>Deviations from plan</source>
        <translation>Abweichungen vom Plan</translation>
    </message>
    <message>
        <source>one side only</source>
        <translation>nur eine Seite</translation>
    </message>
    <message>
        <source>Amount</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>Age</source>
        <translation>Alter</translation>
    </message>
    <message>
        <source>6 months</source>
        <translation>6 Monate</translation>
    </message>
    <message>
        <source>Appearance</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>clear, no glitter</source>
        <translation>klar, kein Glitzern</translation>
    </message>
    <message>
        <source>Temperature taken</source>
        <translation>Temperatur gemessen</translation>
    </message>
    <message>
        <source>at the drain plug</source>
        <translation>an der Ablassschraube</translation>
    </message>
    <message>
        <source>Modifier, % of the fill</source>
        <translation>Zusatz, % der Füllung</translation>
    </message>
    <message>
        <source>As received</source>
        <translation>Zustand bei Eingang</translation>
    </message>
    <message>
        <source>dry, no leaks</source>
        <translation>trocken, dicht</translation>
    </message>
    <message>
        <source>Last service</source>
        <translation>Letzte Wartung</translation>
    </message>
    <message>
        <source>2025-11, oil</source>
        <translation>2025-11, Öl</translation>
    </message>
    <message>
        <source>Friction material</source>
        <translation>Reibwerkstoff</translation>
    </message>
    <message>
        <source>Teeth counted</source>
        <translation>Gezählte Zähne</translation>
    </message>
    <message>
        <source>Not stated</source>
        <translation>Nicht angegeben</translation>
    </message>
    <message>
        <source>On</source>
        <translation>An</translation>
    </message>
    <message>
        <source>Rotating</source>
        <translation>In Bewegung</translation>
    </message>
    <message>
        <source>Breakaway ÷ rotating</source>
        <translation>Losbrechen ÷ Bewegung</translation>
    </message>
    <message>
        <source>Chatter index</source>
        <translation>Ratterzahl</translation>
    </message>
    <message>
        <source>Torque-speed slope</source>
        <translation>Drehmoment über Tempo</translation>
    </message>
    <message>
        <source>Excluded (%1)</source>
        <translation>Ausgeschlossen (%1)</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Welche</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Notes (%1)</source>
        <translation>Hinweise (%1)</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Hinweis</translation>
    </message>
    <message>
        <source>not connected</source>
        <translation>nicht verbunden</translation>
    </message>
    <message>
        <source>95 % interval</source>
        <translation>95-%-Intervall</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Woher</translation>
    </message>
    <message>
        <source>Fills</source>
        <translation>Füllungen</translation>
    </message>
    <message>
        <source>Fill</source>
        <translation>Füllung</translation>
    </message>
    <message>
        <source>Off the line</source>
        <translation>Neben der Geraden</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>to half a turn</source>
        <translation>auf eine halbe Umdrehung</translation>
    </message>
    <message>
        <source>to a quarter of a turn</source>
        <translation>auf eine Viertelumdrehung</translation>
    </message>
    <message>
        <source>to an eighth of a turn</source>
        <translation>auf eine Achtelumdrehung</translation>
    </message>
    <message>
        <source>to a sixteenth of a turn</source>
        <translation>auf eine Sechzehntelumdrehung</translation>
    </message>
    <message>
        <source>brought back to their marks</source>
        <translation>zurück auf ihre Marken</translation>
    </message>
    <message>
        <source>Clockwise, seen from outside</source>
        <translation>Im Uhrzeigersinn, von außen gesehen</translation>
    </message>
    <message>
        <source>Anticlockwise</source>
        <translation>Gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>It reads within what is allowed, at every load.</source>
        <translation>Er zeigt bei jeder Last innerhalb des Erlaubten.</translation>
    </message>
    <message>
        <source>It reads further off than is allowed. Do not judge by it until it has been calibrated.</source>
        <translation>Er zeigt weiter daneben als erlaubt. Nicht danach urteilen, bis er kalibriert ist.</translation>
    </message>
    <message>
        <source>The interval straddles what is allowed: better known weights, arm or place may settle it.</source>
        <translation>Das Intervall reicht über das Erlaubte: besser bekannte Gewichte, Arm oder Ort können es klären.</translation>
    </message>
    <message>
        <source>Its accuracy is not known, so nothing says what is allowed. The differences stand.</source>
        <translation>Seine Genauigkeit ist nicht bekannt, also sagt nichts, was erlaubt ist. Die Abweichungen gelten.</translation>
    </message>
    <message>
        <source>Trend</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>Run-in</source>
        <translation>Einlaufen</translation>
    </message>
    <message>
        <source>Over time</source>
        <translation>Über die Zeit</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Planen</translation>
    </message>
    <message>
        <source>Our repeatability</source>
        <translation>Unsere Wiederholbarkeit</translation>
    </message>
    <message>
        <source>Working …</source>
        <translation>Es wird gerechnet …</translation>
    </message>
    <message>
        <source>Warnings (%1)</source>
        <translation>Warnungen (%1)</translation>
    </message>
    <message>
        <source>Warning</source>
        <translation>Warnung</translation>
    </message>
    <message>
        <source>Groups by</source>
        <translation>Gruppen nach</translation>
    </message>
    <message>
        <source>Compared with</source>
        <translation>Verglichen mit</translation>
    </message>
    <message>
        <source>Within blocks of (day, car)</source>
        <translation>Innerhalb von Blöcken (Tag, Auto)</translation>
    </message>
    <message>
        <source>No-change margin ±</source>
        <translation>Spanne für „unverändert“ ±</translation>
    </message>
    <message>
        <source>Reason for comparing unlike tests</source>
        <translation>Grund, Ungleiches zu vergleichen</translation>
    </message>
    <message>
        <source>why this is sound</source>
        <translation>warum das zulässig ist</translation>
    </message>
    <message>
        <source>Compare anyway</source>
        <translation>Trotzdem vergleichen</translation>
    </message>
    <message>
        <source>▲ These groups cannot be compared: </source>
        <translation>▲ Diese Gruppen sind nicht vergleichbar: </translation>
    </message>
    <message>
        <source>Axles are told apart by</source>
        <translation>Achsen unterschieden nach</translation>
    </message>
    <message>
        <source>Counted by</source>
        <translation>Gezählt nach</translation>
    </message>
    <message>
        <source>Good jobs at the start</source>
        <translation>Gute Aufträge am Anfang</translation>
    </message>
    <message>
        <source>Operators, axles, repeats</source>
        <translation>Prüfer, Achsen, Wiederholungen</translation>
    </message>
    <message>
        <source>Two ways side by side</source>
        <translation>Zwei Wege nebeneinander</translation>
    </message>
    <message>
        <source>Study</source>
        <translation>Untersuchung</translation>
    </message>
    <message>
        <source>Operators (or the two ways) by</source>
        <translation>Prüfer (oder die zwei Wege) nach</translation>
    </message>
    <message>
        <source>Axles by</source>
        <translation>Achsen nach</translation>
    </message>
    <message>
        <source>A fill (drain, flush, fill, run in) is the unit; take its pulls together first.</source>
        <translation>Eine Füllung (ablassen, spülen, füllen, einlaufen) ist die Einheit; ihre Züge zuerst zusammenfassen.</translation>
    </message>
    <message>
        <source>What for</source>
        <translation>Wozu</translation>
    </message>
    <message>
        <source>Scatter from fill to fill</source>
        <translation>Streuung von Füllung zu Füllung</translation>
    </message>
    <message>
        <source>typed below</source>
        <translation>unten eingegeben</translation>
    </message>
    <message>
        <source>Standard deviation</source>
        <translation>Standardabweichung</translation>
    </message>
    <message>
        <source>Shown how surely (power)</source>
        <translation>Wie sicher gezeigt (Schärfe)</translation>
    </message>
    <message>
        <source>Groups, the control first</source>
        <translation>Gruppen, die Vergleichsgruppe zuerst</translation>
    </message>
    <message>
        <source>reference, oil B</source>
        <translation>Referenz, Öl B</translation>
    </message>
    <message>
        <source>Seed of the order</source>
        <translation>Startzahl der Reihenfolge</translation>
    </message>
    <message>
        <source>chosen for you</source>
        <translation>wird gewählt</translation>
    </message>
    <message>
        <source>Draw another order</source>
        <translation>Andere Reihenfolge auslosen</translation>
    </message>
    <message>
        <source>Difference that must not be missed</source>
        <translation>Unterschied, der nicht übersehen werden darf</translation>
    </message>
    <message>
        <source>Mean known within ±</source>
        <translation>Mittel bekannt auf ±</translation>
    </message>
    <message>
        <source>Against</source>
        <translation>Gegen</translation>
    </message>
    <message>
        <source>Which value of it gives</source>
        <translation>Welcher Wert davon ergibt</translation>
    </message>
    <message>
        <source>What to expect at</source>
        <translation>Was ist zu erwarten bei</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Imported</source>
        <translation>Importiert</translation>
    </message>
    <message>
        <source>Recovered</source>
        <translation>Gerettet</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>vehicle, tag=value, 2026-05, simulated</source>
        <translation>Fahrzeug, Marke=Wert, 2026-05, simuliert</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>This program measures; it does not declare a car safe or legal. The maker's manual, local rules and qualified or licensed people decide.</source>
        <translation>Dieses Programm misst; es erklärt kein Auto für sicher oder zulässig. Es entscheiden die Anleitung des Herstellers, örtliche Regeln und befähigte oder zugelassene Personen.</translation>
    </message>
    <message>
        <source>Engine off, ignition key out and away from the car; automatic start-stop and remote start off. Never drive the axle with one wheel raised: the other wheel drives too.</source>
        <translation>Motor aus, Zündschlüssel abgezogen und weg vom Auto; Start-Stopp-Automatik und Fernstart aus. Die Achse nie antreiben, wenn ein Rad angehoben ist: das andere Rad treibt mit.</translation>
    </message>
    <message>
        <source>Hybrid or electric: trained people only, not READY, high-voltage system made safe. A permanent-magnet motor generates voltage when its wheel is turned, and there may be no mechanical neutral: follow the maker.</source>
        <translation>Hybrid oder elektrisch: nur ausgebildete Personen, nicht fahrbereit, Hochvoltanlage gesichert. Ein Motor mit Dauermagneten erzeugt Spannung, wenn sein Rad gedreht wird, und es gibt vielleicht keinen mechanischen Leerlauf: dem Hersteller folgen.</translation>
    </message>
    <message>
        <source>Chock every wheel that stays on the floor, front and rear: with the parking brake off and the gearbox in neutral nothing else holds the car. With all wheels raised chocks hold nothing: four stands or a lift.</source>
        <translation>Jedes Rad, das am Boden bleibt, vorn und hinten verkeilen: bei gelöster Feststellbremse und Leerlauf hält sonst nichts das Auto. Sind alle Räder angehoben, halten Keile nichts: vier Böcke oder eine Hebebühne.</translation>
    </message>
    <message>
        <source>Stands on a hard level floor at approved points; a jack is no support. Air suspension off.</source>
        <translation>Böcke auf hartem, ebenem Boden an zugelassenen Punkten; ein Wagenheber ist keine Stütze. Luftfederung aus.</translation>
    </message>
    <message>
        <source>The pull can roll the car or tip it off its stands: shake it on the stands first, pull downward where you can, nobody in or under the car.</source>
        <translation>Der Zug kann das Auto wegrollen oder von den Böcken kippen: zuerst auf den Böcken rütteln, möglichst nach unten ziehen, niemand im oder unter dem Auto.</translation>
    </message>
    <message>
        <source>Propshaft off: park no longer holds the car.</source>
        <translation>Kardanwelle ab: die Parksperre hält das Auto nicht mehr.</translation>
    </message>
    <message>
        <source>Hot axle and oil can burn you: let them cool.</source>
        <translation>Heiße Achse und heißes Öl können Sie verbrennen: abkühlen lassen.</translation>
    </message>
    <message>
        <source>The unit is clamped so that it can neither tip nor turn, and nothing heavy can fall on hands or feet.</source>
        <translation>Das Differential ist so gespannt, dass es weder kippen noch sich drehen kann, und nichts Schweres kann auf Hände oder Füße fallen.</translation>
    </message>
    <message>
        <source>Check the type: gear, viscous, locking and open units are not judged by this torque.</source>
        <translation>Typ prüfen: Zahnrad-, Visko-, Sperr- und offene Differentiale werden nach diesem Drehmoment nicht beurteilt.</translation>
    </message>
    <message>
        <source>Brakes fully free on both wheels of the axle: look, then turn by hand. An electric parking brake in its service mode, fingers clear of it: it can move by itself.</source>
        <translation>Bremsen an beiden Rädern der Achse ganz frei: hinsehen, dann von Hand drehen. Elektrische Feststellbremse in Wartungsstellung, Finger weg: sie kann sich von selbst bewegen.</translation>
    </message>
    <message>
        <source>Gearbox and transfer case in neutral; the other axle of a four-wheel drive able to turn, or its shaft off.</source>
        <translation>Getriebe und Verteilergetriebe im Leerlauf; die andere Achse eines Allradantriebs drehbar, oder ihre Welle ab.</translation>
    </message>
    <message>
        <source>A gear is engaged: never touch the starter, and let nobody else reach it.</source>
        <translation>Ein Gang ist eingelegt: den Anlasser nie berühren, und niemanden heranlassen.</translation>
    </message>
    <message>
        <source>The other wheel is really held, by floor or strap: not by fingers in the spokes or by a clamped brake hose. Two people agree on the word that means stop.</source>
        <translation>Das andere Rad ist wirklich gehalten, durch Boden oder Gurt: nicht durch Finger in den Speichen oder einen abgeklemmten Bremsschlauch. Zwei Personen vereinbaren das Wort für Halt.</translation>
    </message>
    <message>
        <source>The other shaft is really held, by vice or bar: not by hand.</source>
        <translation>Die andere Welle ist wirklich gehalten, durch Schraubstock oder Stange: nicht von Hand.</translation>
    </message>
    <message>
        <source>The case is really held, by its flange or ring gear bolts: not by hand.</source>
        <translation>Das Gehäuse ist wirklich gehalten, am Flansch oder an den Schrauben des Tellerrads: nicht von Hand.</translation>
    </message>
    <message>
        <source>Both wheels (or shafts) clear of the floor and free to turn; hands, hoses and cables clear of the second one: it turns too.</source>
        <translation>Beide Räder (oder Wellen) frei vom Boden und drehbar; Hände, Schläuche und Kabel weg vom zweiten: es dreht mit.</translation>
    </message>
    <message>
        <source>Wheel (or bare disc) bolted up tight, adapter centred, nothing loose; do not pull in the loosening direction on a hub nut.</source>
        <translation>Rad (oder bloße Scheibe) fest verschraubt, Adapter mittig, nichts locker; an einer Nabenmutter nicht in Löserichtung ziehen.</translation>
    </message>
    <message>
        <source>Stay below the lowest rating of transducer, lever, adapter, socket and stud; no extension pipe, no power or impact tool.</source>
        <translation>Unter der kleinsten zulässigen Last von Aufnehmer, Hebel, Adapter, Nuss und Bolzen bleiben; kein Verlängerungsrohr, kein Kraft- oder Schlagwerkzeug.</translation>
    </message>
    <message>
        <source>Eye protection on; loose clothing, hair and hands away from spokes and lever.</source>
        <translation>Augenschutz auf; lose Kleidung, Haare und Hände weg von Speichen und Hebel.</translation>
    </message>
    <message>
        <source>The lever's swing clear; stand outside its plane: wound shafts spring back. Ease the load off; never release the lever under load.</source>
        <translation>Der Schwenkbereich des Hebels ist frei; außerhalb seiner Ebene stehen: verdrehte Wellen federn zurück. Last langsam wegnehmen; den Hebel nie unter Last loslassen.</translation>
    </message>
    <message>
        <source>Zero with the lever hanging or off, after warm-up, unloaded; repeat at the end.</source>
        <translation>Null mit hängendem oder abgenommenem Hebel, warm, unbelastet; am Ende wiederholen.</translation>
    </message>
    <message>
        <source>Smooth ramp, two to three seconds to the first slip; 2-10 turns a minute; a jerk can double the reading.</source>
        <translation>Gleichmäßig, zwei bis drei Sekunden bis zum ersten Rutschen; 2-10 Umdrehungen je Minute; ein Ruck kann die Ablesung verdoppeln.</translation>
    </message>
    <message>
        <source>At least two turns for a steady value, five repeats for a peak, both directions if safe.</source>
        <translation>Mindestens zwei Umdrehungen für einen stetigen Wert, fünf Wiederholungen für eine Spitze, beide Richtungen, wenn sicher.</translation>
    </message>
    <message>
        <source>Keep turning only if the wheel moves; stop if torque climbs without motion. Stop at binding, knocking or steps: that is a fault, not a torque.</source>
        <translation>Nur weiterdrehen, wenn sich das Rad bewegt; aufhören, wenn das Drehmoment ohne Bewegung steigt. Aufhören bei Klemmen, Klopfen oder Stufen: das ist ein Fehler, kein Drehmoment.</translation>
    </message>
    <message>
        <source>Lever, adapter and strap off first.</source>
        <translation>Zuerst Hebel, Adapter und Gurt ab.</translation>
    </message>
    <message>
        <source>Wheel nuts to the maker's torque.</source>
        <translation>Radmuttern mit dem Drehmoment des Herstellers.</translation>
    </message>
    <message>
        <source>Brake pedal pumped until it is firm; parking brake back in service.</source>
        <translation>Bremspedal pumpen, bis es fest ist; Feststellbremse wieder in Betrieb.</translation>
    </message>
    <message>
        <source>Propshaft refitted, by its marks and to the maker's torque.</source>
        <translation>Kardanwelle wieder montiert, nach ihren Marken und mit dem Drehmoment des Herstellers.</translation>
    </message>
    <message>
        <source>Chocks away last, when the car stands on its wheels and is held.</source>
        <translation>Keile zuletzt weg, wenn das Auto auf seinen Rädern steht und gehalten ist.</translation>
    </message>
    <message>
        <source>The first peak may exceed the rotating torque: normal for plate types.</source>
        <translation>Die erste Spitze kann über dem Drehmoment in Bewegung liegen: bei Lamellen normal.</translation>
    </message>
    <message>
        <source>A lever on a stud that points outward reads low by about 10-20 %; one that points inward reads high: enter stud circle, lever length and angle.</source>
        <translation>Ein Hebel auf einem Bolzen, der nach außen zeigt, liest 10-20 % zu wenig; einer, der nach innen zeigt, zu viel: Lochkreis, Hebellänge und Winkel eingeben.</translation>
    </message>
    <message>
        <source>Part of the number is gearbox, seals, bearings and pads. Small limits may be mostly drag.</source>
        <translation>Ein Teil der Zahl sind Getriebe, Dichtungen, Lager und Beläge. Kleine Grenzwerte können vor allem Schleppmoment sein.</translation>
    </message>
    <message>
        <source>The test shows the mean of both packs; left and right readings differ because of wheel drag, not a weak side.</source>
        <translation>Die Prüfung zeigt das Mittel beider Pakete; links und rechts unterscheiden sich durch das Schleppen der Räder, nicht durch eine schwache Seite.</translation>
    </message>
    <message>
        <source>On a bench with the case held it reads about double the car.</source>
        <translation>Auf der Bank mit gehaltenem Gehäuse zeigt sich etwa das Doppelte wie im Auto.</translation>
    </message>
    <message>
        <source>lbf·ft, lbf·in, N·m and kgf·m are different torques; use the limit in the unit and for the condition it is printed for.</source>
        <translation>lbf·ft, lbf·in, N·m und kgf·m sind verschiedene Drehmomente; den Grenzwert in der Einheit und für den Zustand verwenden, für den er gedruckt ist.</translation>
    </message>
    <message>
        <source>Printed limits differ by axle and contain misprints; yours comes from your manual or rule book.</source>
        <translation>Gedruckte Grenzwerte unterscheiden sich je Achse und enthalten Druckfehler; Ihrer stammt aus Ihrer Anleitung oder Ihrem Regelwerk.</translation>
    </message>
    <message>
        <source>Near the limit the honest answer may be that it is too close to call.</source>
        <translation>Nahe am Grenzwert kann die ehrliche Antwort lauten: zu nah, um zu entscheiden.</translation>
    </message>
    <message>
        <source>Compare before and after only at the same temperature, speed, rest, side, fixture and oil.</source>
        <translation>Vorher und nachher nur bei gleicher Temperatur, Tempo, Ruhe, Seite, Aufnahme und gleichem Öl vergleichen.</translation>
    </message>
    <message>
        <source>Passing this test is no proof of traction under power: ramps and gear separation act only with drive torque.</source>
        <translation>Bestehen beweist keine Traktion unter Last: Rampen und Zahnkräfte wirken nur mit Antriebsmoment.</translation>
    </message>
    <message>
        <source>A low reading with good plates: check plate order, springs, too much friction modifier, hot oil.</source>
        <translation>Wenig bei guten Lamellen: Reihenfolge der Lamellen, Federn, zu viel Reibungszusatz, heißes Öl prüfen.</translation>
    </message>
    <message>
        <source>Chatter: oil and friction modifier first; more modifier also lowers holding torque.</source>
        <translation>Rattern: zuerst Öl und Reibungszusatz; mehr Zusatz senkt auch das Haltemoment.</translation>
    </message>
    <message>
        <source>New packs lose preload as they run in: test again.</source>
        <translation>Neue Pakete verlieren beim Einlaufen Vorspannung: noch einmal prüfen.</translation>
    </message>
    <message>
        <source>Too high fails a maximum rule (racing), too low fails a minimum rule (service): know which applies.</source>
        <translation>Zu viel verletzt eine Höchstregel (Rennen), zu wenig eine Mindestregel (Werkstatt): wissen, welche gilt.</translation>
    </message>
    <message>
        <source>Demonstration or simulated data must never be filed as a test.</source>
        <translation>Übungs- oder simulierte Daten dürfen nie als Prüfung abgelegt werden.</translation>
    </message>
    <message>
        <source>Before anyone pulls</source>
        <translation>Bevor jemand zieht</translation>
    </message>
    <message>
        <source>This is practice on a simulated axle, nothing can move. On a real car each of these is checked by hand.</source>
        <translation>Dies ist eine Übung an einer simulierten Achse, nichts kann sich bewegen. Am echten Auto wird jeder Punkt von Hand geprüft.</translation>
    </message>
    <message>
        <source>Do each, then tick it: the space bar ticks the next one. The maker's manual always comes first.</source>
        <translation>Jeden Punkt tun, dann abhaken: die Leertaste hakt den nächsten ab. Die Anleitung des Herstellers geht immer vor.</translation>
    </message>
    <message>
        <source>Afterwards:</source>
        <translation>Danach:</translation>
    </message>
    <message>
        <source>Simulated: this must never be filed as a test.</source>
        <translation>Simuliert: dies darf nie als Prüfung abgelegt werden.</translation>
    </message>
    <message>
        <source>Sign the test</source>
        <translation>Prüfung unterschreiben</translation>
    </message>
    <message>
        <source>The test is finished</source>
        <translation>Die Prüfung ist beendet</translation>
    </message>
    <message>
        <source>Within</source>
        <translation>Innerhalb</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Außerhalb</translation>
    </message>
    <message>
        <source>Too close to call</source>
        <translation>Zu nah zum Entscheiden</translation>
    </message>
    <message>
        <source>Not valid</source>
        <translation>Nicht gültig</translation>
    </message>
    <message>
        <source>No result yet</source>
        <translation>Noch kein Ergebnis</translation>
    </message>
    <message>
        <source>Job card</source>
        <translation>Auftragskarte</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Kind of test</source>
        <translation>Art der Prüfung</translation>
    </message>
    <message>
        <source>Fixture</source>
        <translation>Aufnahme am Rad</translation>
    </message>
    <message>
        <source>Limit</source>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <source>Transducer</source>
        <translation>Aufnehmer</translation>
    </message>
    <message>
        <source>Value of this job</source>
        <translation>Wert dieses Auftrags</translation>
    </message>
    <message>
        <source>Pulls: %1 of %2</source>
        <translation>Züge: %1 von %2</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Überspringen</translation>
    </message>
    <message>
        <source>Back to the pulls</source>
        <translation>Zurück zu den Zügen</translation>
    </message>
    <message>
        <source>End the test</source>
        <translation>Prüfung beenden</translation>
    </message>
    <message>
        <source>Far view</source>
        <translation>Fernansicht</translation>
    </message>
    <message>
        <source>Dial reading</source>
        <translation>Ablesung</translation>
    </message>
    <message>
        <source>Exclude last pull</source>
        <translation>Letzten streichen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Practise now</source>
        <translation>Jetzt üben</translation>
    </message>
    <message>
        <source>Choose a transducer</source>
        <translation>Aufnehmer wählen</translation>
    </message>
    <message>
        <source>Type a reading</source>
        <translation>Ablesung eingeben</translation>
    </message>
    <message>
        <source>Hold one wheel, turn the other</source>
        <translation>Ein Rad halten, das andere drehen</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
    <message>
        <source>Take a new zero</source>
        <translation>Neue Null nehmen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Save the page to print</source>
        <translation>Seite zum Drucken speichern</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Mistakes and their sizes</source>
        <translation>Fehler und ihre Größe</translation>
    </message>
    <message>
        <source>Finish with %1 of %2 pulls</source>
        <translation>Mit %1 von %2 Zügen abschließen</translation>
    </message>
</context>
</TS>
