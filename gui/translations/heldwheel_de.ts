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
        <source>Review</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleich</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
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
        <source>How the lever meets the wheel. Key 3</source>
        <translation>Wie der Hebel am Rad sitzt. Taste 3</translation>
    </message>
    <message>
        <source>hand</source>
        <translation>Hand</translation>
    </message>
    <message>
        <source>drive</source>
        <translation>Antrieb</translation>
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
        <source>Lever at the start, from 3 o'clock</source>
        <translation>Hebel am Anfang, ab 3 Uhr</translation>
    </message>
    <message>
        <source>0° = 3 o'clock, clockwise</source>
        <translation>0° = 3 Uhr, im Uhrzeigersinn</translation>
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
        <source>Safety checks</source>
        <translation>Sicherheit</translation>
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
        <source>Zero again</source>
        <translation>Null danach</translation>
    </message>
    <message>
        <source>Sign</source>
        <translation>Signieren</translation>
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
        <translation>Std.-Abw., %1</translation>
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
        <source>in neutral</source>
        <translation>im Leerlauf</translation>
    </message>
    <message>
        <source>%1%2. Pulls are recorded, but no result is given: put the type right on the Axle card, or a reason to judge it all the same.</source>
        <translation>%1%2. Züge werden aufgezeichnet, aber es gibt kein Ergebnis: Bauart auf der Karte Achse berichtigen, oder einen Grund angeben, trotzdem zu urteilen.</translation>
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
        <translation>Daten, Ort und Personen</translation>
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
        <translation>Auftrag</translation>
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
        <source>Finish with %1 of %2 pulls</source>
        <translation>Mit %1 von %2 Zügen abschließen</translation>
    </message>
    <message>
        <source>A test is under way. Close all the same?</source>
        <translation>Eine Prüfung läuft. Trotzdem schließen?</translation>
    </message>
    <message>
        <source>Colours, text size, units, language, folder, what appears on reports</source>
        <translation>Farben, Textgröße, Einheiten, Sprache, Ordner, was auf Berichten steht</translation>
    </message>
    <message>
        <source>Go on testing</source>
        <translation>Weiter prüfen</translation>
    </message>
    <message>
        <source>Its recording is closed properly and stands on Review, the job card is kept; the test stays unsigned.</source>
        <translation>Ihre Aufzeichnung wird ordentlich geschlossen und steht unter Ansehen, die Auftragskarte bleibt; die Prüfung bleibt ohne Unterschrift.</translation>
    </message>
    <message>
        <source>Next unit, Ctrl+U</source>
        <translation>Nächste Einheit, Strg+U</translation>
    </message>
    <message>
        <source>Not a recording, a table or a folder: %1</source>
        <translation>Weder Aufzeichnung noch Tabelle noch Ordner: %1</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>%1 cut off before being closed. Everything saved until then is there.</source>
        <translation>%1 abgebrochen, bevor sie geschlossen wurden. Alles bis dahin Gespeicherte ist da.</translation>
    </message>
    <message>
        <source>A recording was</source>
        <translation>Eine Aufzeichnung wurde</translation>
    </message>
    <message>
        <source>One recording was</source>
        <translation>Eine Aufzeichnung wurde</translation>
    </message>
    <message>
        <source>%1 recordings were</source>
        <translation>%1 Aufzeichnungen wurden</translation>
    </message>
    <message>
        <source>It was counted as %1 to %2: one of the two is wrong.</source>
        <translation>Gezählt wurde %1 bis %2: eines von beiden stimmt nicht.</translation>
    </message>
    <message>
        <source>Nothing has been changed yet.</source>
        <translation>Noch wurde nichts geändert.</translation>
    </message>
    <message>
        <source>Say why: the reason is kept with the change.</source>
        <translation>Sagen Sie warum: der Grund wird mit der Änderung aufbewahrt.</translation>
    </message>
    <message>
        <source>Enter who did the test.</source>
        <translation>Eintragen, wer geprüft hat.</translation>
    </message>
    <message>
        <source>There is no reading yet: keep one first.</source>
        <translation>Es gibt noch keine Ablesung: erst eine behalten.</translation>
    </message>
    <message>
        <source>No fixture yet: say how the lever meets the wheel.</source>
        <translation>Noch keine Vorrichtung: sagen Sie, wie der Hebel am Rad sitzt.</translation>
    </message>
    <message>
        <source>Something unexpected went wrong (%1: %2). What is recorded is safe.</source>
        <translation>Etwas Unerwartetes ist schiefgegangen (%1: %2). Was aufgezeichnet ist, ist sicher.</translation>
    </message>
    <message>
        <source>Type not stated</source>
        <translation>Bauart nicht angegeben</translation>
    </message>
    <message>
        <source>With packs, kind not known</source>
        <translation>Mit Lamellenpaketen, Art nicht bekannt</translation>
    </message>
    <message>
        <source>Nothing was recognised yet.</source>
        <translation>Noch nichts erkannt.</translation>
    </message>
    <message>
        <source>Give it a name first, to find it again in the list.</source>
        <translation>Erst einen Namen geben, um es in der Liste wiederzufinden.</translation>
    </message>
    <message>
        <source>The two figures disagree: %1 N·m and %2 N·m. One of them is misprinted or mistyped.</source>
        <translation>Die zwei Zahlen passen nicht zusammen: %1 N·m und %2 N·m. Eine ist falsch gedruckt oder getippt.</translation>
    </message>
    <message>
        <source>%1 (simulated)</source>
        <translation>%1 (simuliert)</translation>
    </message>
    <message>
        <source>Half of a ratio</source>
        <translation>Hälfte eines Verhältnisses</translation>
    </message>
    <message>
        <source>No limit to compare with</source>
        <translation>Kein Grenzwert zum Vergleichen</translation>
    </message>
    <message>
        <source>The limit compares a recording in gear with one in neutral: say under “Kind of test” which this is.</source>
        <translation>Der Grenzwert vergleicht eine Aufzeichnung im Gang mit einer im Leerlauf: sagen Sie unter „Art der Prüfung“, welche diese ist.</translation>
    </message>
    <message>
        <source>This is the half %1. The limit compares two recordings, both wheels free: the rotating maximum in gear ÷ that in neutral. Record the half %2, too; on the Review page choose both.</source>
        <translation>Dies ist die Hälfte %1. Der Grenzwert vergleicht zwei Aufzeichnungen, beide Räder frei: Drehmoment-Maximum im Gang ÷ dem im Leerlauf. Zeichnen Sie auch die Hälfte %2 auf; wählen Sie unter Ansehen beide.</translation>
    </message>
    <message>
        <source>connecting</source>
        <translation>verbindet</translation>
    </message>
    <message>
        <source>ended</source>
        <translation>beendet</translation>
    </message>
    <message>
        <source>live</source>
        <translation>verbunden</translation>
    </message>
    <message>
        <source>reconnecting</source>
        <translation>verbindet neu</translation>
    </message>
    <message>
        <source>silent</source>
        <translation>schweigt</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>übersprungen</translation>
    </message>
    <message>
        <source>wrong</source>
        <translation>falsch</translation>
    </message>
    <message>
        <source>A name is made of letters, digits, blanks and dashes.</source>
        <translation>Ein Name besteht aus Buchstaben, Ziffern, Leerzeichen und Strichen.</translation>
    </message>
    <message>
        <source>Tests name their drag and zero recordings: these keep their names.</source>
        <translation>Prüfungen nennen ihre Aufzeichnungen von Schleppmoment und Null: diese behalten ihren Namen.</translation>
    </message>
    <message>
        <source>There is a %1 already.</source>
        <translation>Es gibt schon eine Datei %1.</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Heldwheel records the torque at a wheel while it is turned by a lever, and says what it is worth. It measures; it does not declare a car safe or legal.</source>
        <translation>Heldwheel zeichnet das Drehmoment an einem Rad auf, während es mit einem Hebel gedreht wird, und sagt, was es wert ist. Es misst; es erklärt kein Auto für sicher oder zulässig.</translation>
    </message>
    <message>
        <source>Key Esc</source>
        <translation>Taste Esc</translation>
    </message>
    <message>
        <source>Paper trail: a recording is closed with its SHA-256 and never changed. What is decided later stands beside it with time, name and reason, and makes a new revision once the test is signed. A report names both by their hashes; heldwheel-read report --verify does the work again and compares.</source>
        <translation>Nachweis: eine Aufzeichnung wird mit ihrem SHA-256 geschlossen und nie geändert. Was später entschieden wird, steht daneben mit Zeit, Name und Grund und ergibt nach der Unterschrift eine neue Revision. Ein Bericht nennt beide mit ihren Prüfsummen; heldwheel-read report --verify rechnet noch einmal und vergleicht.</translation>
    </message>
    <message>
        <source>Recordings: %1</source>
        <translation>Aufzeichnungen: %1</translation>
    </message>
    <message>
        <source>Settings and lists: %1</source>
        <translation>Einstellungen und Listen: %1</translation>
    </message>
    <message>
        <source>These lines, for a message</source>
        <translation>Diese Zeilen, für eine Nachricht</translation>
    </message>
    <message>
        <source>All recordings</source>
        <translation>Alle Aufzeichnungen</translation>
    </message>
    <message>
        <source>Dial readings</source>
        <translation>Skalen-Ablesungen</translation>
    </message>
    <message>
        <source>Tests</source>
        <translation>Prüfungen</translation>
    </message>
    <message>
        <source>Nothing is found. Take a word out of the search, or choose another kind.</source>
        <translation>Nichts gefunden. Nehmen Sie ein Wort aus der Suche oder wählen Sie eine andere Art.</translation>
    </message>
    <message>
        <source>There is no recording here yet. Make a test, practise, or drop a recording, a table or a folder on this window.</source>
        <translation>Hier ist noch keine Aufzeichnung. Prüfen Sie, üben Sie, oder ziehen Sie eine Aufzeichnung, eine Tabelle oder einen Ordner auf dieses Fenster.</translation>
    </message>
    <message>
        <source>%1 recordings</source>
        <translation>%1 Aufzeichnungen</translation>
    </message>
    <message>
        <source>%1 of %2 recordings</source>
        <translation>%1 von %2 Aufzeichnungen</translation>
    </message>
    <message>
        <source>A budget needs at least one valid pull and a fixture.</source>
        <translation>Ein Budget braucht mindestens einen gültigen Zug und eine Vorrichtung.</translation>
    </message>
    <message>
        <source>Contribution</source>
        <translation>Beitrag</translation>
    </message>
    <message>
        <source>Input</source>
        <translation>Eingang</translation>
    </message>
    <message>
        <source>Sensitivity</source>
        <translation>Empfindlichkeit</translation>
    </message>
    <message>
        <source>Share</source>
        <translation>Anteil</translation>
    </message>
    <message>
        <source>Standard uncertainty</source>
        <translation>Standardunsicherheit</translation>
    </message>
    <message>
        <source>Together %1 (95 %), %2 effective degrees of freedom; contributions in %3. According to JCGM 100.</source>
        <translation>Zusammen %1 (95 %), %2 effektive Freiheitsgrade; Beiträge in %3. Nach JCGM 100.</translation>
    </message>
    <message>
        <source>Uncertainty budget</source>
        <translation>Unsicherheitsbudget</translation>
    </message>
    <message>
        <source>Uncertainty budget of</source>
        <translation>Unsicherheitsbudget von</translation>
    </message>
    <message>
        <source>Bluetooth, serial, virtual</source>
        <translation>Bluetooth, seriell, virtuell</translation>
    </message>
    <message>
        <source>How the lever meets the wheel</source>
        <translation>Wie der Hebel am Rad sitzt</translation>
    </message>
    <message>
        <source>Limit, %1 · %2</source>
        <translation>Grenzwert, %1 · %2</translation>
    </message>
    <message>
        <source>New job, as last time, earlier jobs</source>
        <translation>Neuer Auftrag, wie letztes Mal, frühere Aufträge</translation>
    </message>
    <message>
        <source>No fixture yet</source>
        <translation>Noch keine Vorrichtung</translation>
    </message>
    <message>
        <source>No limit</source>
        <translation>Kein Grenzwert</translation>
    </message>
    <message>
        <source>Not chosen</source>
        <translation>Nicht gewählt</translation>
    </message>
    <message>
        <source>Not usable yet</source>
        <translation>Noch nicht brauchbar</translation>
    </message>
    <message>
        <source>On the wrong type the number means nothing</source>
        <translation>Bei der falschen Bauart bedeutet die Zahl nichts</translation>
    </message>
    <message>
        <source>Open it to see what is missing</source>
        <translation>Öffnen, um zu sehen, was fehlt</translation>
    </message>
    <message>
        <source>Practice card: your job card comes back afterwards</source>
        <translation>Übungskarte: Ihre Auftragskarte kommt danach zurück</translation>
    </message>
    <message>
        <source>Values are shown, none is judged</source>
        <translation>Werte werden gezeigt, keiner wird beurteilt</translation>
    </message>
    <message>
        <source>Written to %1</source>
        <translation>Geschrieben nach %1</translation>
    </message>
    <message>
        <source>B at %1 s, R %2 to %3 s</source>
        <translation>B bei %1 s, R %2 bis %3 s</translation>
    </message>
    <message>
        <source>Exclude this pull</source>
        <translation>Diesen Zug ausschließen</translation>
    </message>
    <message>
        <source>Let it count again</source>
        <translation>Wieder zählen lassen</translation>
    </message>
    <message>
        <source>Nothing has been moved yet.</source>
        <translation>Noch wurde nichts bewegt.</translation>
    </message>
    <message>
        <source>Pull %1: drag B and the stretch</source>
        <translation>Zug %1: B und die Strecke ziehen</translation>
    </message>
    <message>
        <source>Reason, kept with the decision</source>
        <translation>Grund, wird mit der Entscheidung aufbewahrt</translation>
    </message>
    <message>
        <source>Restore automatic marks</source>
        <translation>Automatische Marken wiederherstellen</translation>
    </message>
    <message>
        <source>Save correction</source>
        <translation>Korrektur speichern</translation>
    </message>
    <message>
        <source>the lever knocked against the stand</source>
        <translation>der Hebel stieß gegen den Bock</translation>
    </message>
    <message>
        <source>Edit details</source>
        <translation>Angaben ändern</translation>
    </message>
    <message>
        <source>Edit details: written beside the recording, which stays as it is</source>
        <translation>Angaben ändern: steht neben der Aufzeichnung, die bleibt, wie sie ist</translation>
    </message>
    <message>
        <source>Reason, kept with the change</source>
        <translation>Grund, wird mit der Änderung aufbewahrt</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>The fixture has faults: put them right first.</source>
        <translation>Die Vorrichtung hat Fehler: erst berichtigen.</translation>
    </message>
    <message>
        <source>the lever was measured afterwards</source>
        <translation>der Hebel wurde nachträglich gemessen</translation>
    </message>
    <message>
        <source>%1 Pulls are recorded, but no result is given.</source>
        <translation>%1 Züge werden aufgezeichnet, aber es gibt kein Ergebnis.</translation>
    </message>
    <message>
        <source>&amp;Shim</source>
        <translation>A&amp;usgleichsscheibe</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>2 × 6 plates, order, springs</source>
        <translation>2 × 6 Lamellen, Reihenfolge, Federn</translation>
    </message>
    <message>
        <source>3.73 or 41/11</source>
        <translation>3,73 oder 41/11</translation>
    </message>
    <message>
        <source>A tag can be wrong after a swap. Turns of propshaft and wheels tell the ratio.</source>
        <translation>Ein Schild kann nach einem Tausch falsch sein. Umdrehungen von Kardanwelle und Rädern sagen die Übersetzung.</translation>
    </message>
    <message>
        <source>Axle &amp;tag</source>
        <translation>&amp;Achsschild</translation>
    </message>
    <message>
        <source>Count the turns</source>
        <translation>Umdrehungen zählen</translation>
    </message>
    <message>
        <source>Counted, %1: %2, %3.</source>
        <translation>Gezählt, %1: %2, %3.</translation>
    </message>
    <message>
        <source>Find the type</source>
        <translation>Bauart finden</translation>
    </message>
    <message>
        <source>Pack &amp;build</source>
        <translation>Aufbau des &amp;Pakets</translation>
    </message>
    <message>
        <source>R&amp;eason to judge it all the same, kept with the recording</source>
        <translation>Grund, trotzdem zu b&amp;eurteilen, bleibt bei der Aufzeichnung</translation>
    </message>
    <message>
        <source>Rat&amp;io</source>
        <translation>Überse&amp;tzung</translation>
    </message>
    <message>
        <source>T&amp;ype found</source>
        <translation>Gefundene Ba&amp;uart</translation>
    </message>
    <message>
        <source>Takes the last change back. Ctrl+Z</source>
        <translation>Nimmt die letzte Änderung zurück. Strg+Z</translation>
    </message>
    <message>
        <source>Which axle it is, and whether a held-wheel torque means anything for it.</source>
        <translation>Welche Achse es ist und ob ein Moment bei gehaltenem Rad etwas über sie sagt.</translation>
    </message>
    <message>
        <source>as stamped</source>
        <translation>wie eingeschlagen</translation>
    </message>
    <message>
        <source>before and after on the same axle</source>
        <translation>vorher und nachher an derselben Achse</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Imported from %1 as %2</source>
        <translation>Importiert aus %1 als %2</translation>
    </message>
    <message>
        <source>Saved as %1</source>
        <translation>Gespeichert als %1</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Importieren</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportieren</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Nothing saved yet</source>
        <translation>Noch nichts gespeichert</translation>
    </message>
    <message>
        <source>Pick one of %1</source>
        <translation>Einen von %1 wählen</translation>
    </message>
    <message>
        <source>%1 Both driven wheels raised.</source>
        <translation>%1 Beide Antriebsräder angehoben.</translation>
    </message>
    <message>
        <source>%1 types fit</source>
        <translation>%1 Bauarten passen</translation>
    </message>
    <message>
        <source>Answer first</source>
        <translation>Erst antworten</translation>
    </message>
    <message>
        <source>Answer what you can try; each answer rules types out.</source>
        <translation>Beantworten Sie, was Sie probieren können; jede Antwort schließt Bauarten aus.</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Gefunden</translation>
    </message>
    <message>
        <source>If a tag or the parts list tells which:</source>
        <translation>Wenn Schild oder Teileliste es sagt:</translation>
    </message>
    <message>
        <source>Not judged</source>
        <translation>Nicht beurteilt</translation>
    </message>
    <message>
        <source>Not tried yet</source>
        <translation>Noch nicht versucht</translation>
    </message>
    <message>
        <source>Nothing fits</source>
        <translation>Nichts passt</translation>
    </message>
    <message>
        <source>Nothing tried yet</source>
        <translation>Noch nichts versucht</translation>
    </message>
    <message>
        <source>Put %1 on the card</source>
        <translation>%1 auf die Karte</translation>
    </message>
    <message>
        <source>Put it on the card</source>
        <translation>Auf die Karte</translation>
    </message>
    <message>
        <source>Stud circle: take %1</source>
        <translation>Lochkreis: %1 nehmen</translation>
    </message>
    <message>
        <source>The two studs are</source>
        <translation>Die zwei Bolzen sind</translation>
    </message>
    <message>
        <source>Where a stud circle cannot be measured across: measure from one stud's edge to the same edge of another.</source>
        <translation>Wo der Lochkreis nicht quer messbar ist: von der Kante eines Bolzens zur gleichen Kante eines anderen messen.</translation>
    </message>
    <message>
        <source>one reading</source>
        <translation>eine Ablesung</translation>
    </message>
    <message>
        <source>Accuracy class (max. error)</source>
        <translation>Genauigkeitsklasse (größter Fehler)</translation>
    </message>
    <message>
        <source>Customer's page</source>
        <translation>Kundenseite</translation>
    </message>
    <message>
        <source>First the checks</source>
        <translation>Erst die Sicherheit</translation>
    </message>
    <message>
        <source>Forget the last one</source>
        <translation>Die letzte vergessen</translation>
    </message>
    <message>
        <source>Full scale</source>
        <translation>Skalenende</translation>
    </message>
    <message>
        <source>Keep this reading</source>
        <translation>Diese Ablesung behalten</translation>
    </message>
    <message>
        <source>Make report</source>
        <translation>Bericht schreiben</translation>
    </message>
    <message>
        <source>One page, PDF</source>
        <translation>Eine Seite, PDF</translation>
    </message>
    <message>
        <source>Open in Review</source>
        <translation>Unter Ansehen öffnen</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Ablesung</translation>
    </message>
    <message>
        <source>Return key</source>
        <translation>Eingabetaste</translation>
    </message>
    <message>
        <source>Scale division</source>
        <translation>Skalenteil</translation>
    </message>
    <message>
        <source>Sign and file</source>
        <translation>Unterschreiben und ablegen</translation>
    </message>
    <message>
        <source>The engineer's page, PDF</source>
        <translation>Die Ingenieurseite, PDF</translation>
    </message>
    <message>
        <source>Type what the dial showed: lever, interval and limit apply as to a recording.</source>
        <translation>Tippen Sie, was die Skala zeigte: Hebel, Intervall und Grenzwert gelten wie bei einer Aufzeichnung.</translation>
    </message>
    <message>
        <source>Unit of the dial</source>
        <translation>Einheit der Skala</translation>
    </message>
    <message>
        <source>What was read</source>
        <translation>Was abgelesen wurde</translation>
    </message>
    <message>
        <source>Writes the job to the recordings</source>
        <translation>Schreibt den Auftrag zu den Aufzeichnungen</translation>
    </message>
    <message>
        <source>Writing the page …</source>
        <translation>Die Seite wird geschrieben …</translation>
    </message>
    <message>
        <source>first name, or initials</source>
        <translation>Vorname oder Kürzel</translation>
    </message>
    <message>
        <source>No limit for this quantity</source>
        <translation>Kein Grenzwert für diese Größe</translation>
    </message>
    <message>
        <source>At the axle: reading × %1</source>
        <translation>An der Achse: Ablesung × %1</translation>
    </message>
    <message>
        <source>%1 (%2 to %3)</source>
        <translation>%1 (%2 bis %3)</translation>
    </message>
    <message>
        <source>Open the file</source>
        <translation>Datei öffnen</translation>
    </message>
    <message>
        <source>Factor</source>
        <translation>Faktor</translation>
    </message>
    <message>
        <source>Hub drawing</source>
        <translation>Zeichnung der Nabe</translation>
    </message>
    <message>
        <source>no fixture yet</source>
        <translation>noch keine Vorrichtung</translation>
    </message>
    <message>
        <source>%1 studs, lever %2° off the radius</source>
        <translation>%1 Bolzen, Hebel %2° neben dem Radius</translation>
    </message>
    <message>
        <source>A pull: load smoothly over two to three seconds; the first peak is the breakaway torque B; keep turning slowly, the steady level is the rotating torque R; ease the load off and keep hold of the lever.</source>
        <translation>Ein Zug: in zwei bis drei Sekunden gleichmäßig belasten; die erste Spitze ist das Losbrechmoment B; langsam weiterdrehen, das stetige Niveau ist das Drehmoment in Bewegung R; Last wegnehmen und den Hebel festhalten.</translation>
    </message>
    <message>
        <source>Name: %1</source>
        <translation>Name: %1</translation>
    </message>
    <message>
        <source>a transducer</source>
        <translation>ein Aufnehmer</translation>
    </message>
    <message>
        <source>a fixture</source>
        <translation>eine Vorrichtung</translation>
    </message>
    <message>
        <source>a kind of test</source>
        <translation>eine Art der Prüfung</translation>
    </message>
    <message>
        <source>virtual transducer</source>
        <translation>virtueller Aufnehmer</translation>
    </message>
    <message>
        <source>Transducer connecting</source>
        <translation>Aufnehmer wird verbunden</translation>
    </message>
    <message>
        <source>Let it rest: %1</source>
        <translation>Ruhen lassen: %1</translation>
    </message>
    <message>
        <source>%1 of %2 pulls</source>
        <translation>%1 von %2 Zügen</translation>
    </message>
    <message>
        <source>Bytes %1</source>
        <translation>Bytes %1</translation>
    </message>
    <message>
        <source>%1 readings, %2, %3 a second</source>
        <translation>%1 Messwerte, %2, %3 je Sekunde</translation>
    </message>
    <message>
        <source>Hash: %1 (shows that it is unchanged, not that it is genuine)</source>
        <translation>Prüfsumme: %1 (zeigt, dass sie unverändert ist, nicht, dass sie echt ist)</translation>
    </message>
    <message>
        <source>%1 recordings, %2 more</source>
        <translation>%1 Aufzeichnungen, %2 weitere</translation>
    </message>
    <message>
        <source>•  %1</source>
        <translation>•  %1</translation>
    </message>
    <message>
        <source>breakaway, %1</source>
        <translation>Losbrechmoment, %1</translation>
    </message>
    <message>
        <source>rotating mean, %1</source>
        <translation>Drehmoment in Bewegung, Mittel, %1</translation>
    </message>
    <message>
        <source>rotating maximum, %1</source>
        <translation>Drehmoment in Bewegung, Maximum, %1</translation>
    </message>
    <message>
        <source>in gear ÷ neutral at least %1</source>
        <translation>mit Gang ÷ Leerlauf mindestens %1</translation>
    </message>
    <message>
        <source>in gear ÷ neutral at most %1</source>
        <translation>mit Gang ÷ Leerlauf höchstens %1</translation>
    </message>
    <message>
        <source>Time since the first pull (s)</source>
        <translation>Zeit seit dem ersten Zug (s)</translation>
    </message>
    <message>
        <source>the limit does not say which part is held: a held case reads about double</source>
        <translation>der Grenzwert sagt nicht, welches Teil gehalten ist: ein gehaltenes Gehäuse zeigt etwa das Doppelte</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>What is to be edited</source>
        <translation>Was geändert werden soll</translation>
    </message>
    <message>
        <source>Packs</source>
        <translation>Pakete</translation>
    </message>
    <message>
        <source>left %1 parts</source>
        <translation>links %1 Teile</translation>
    </message>
    <message>
        <source>right %1 parts</source>
        <translation>rechts %1 Teile</translation>
    </message>
    <message>
        <source>picked: %1, %2</source>
        <translation>gewählt: %1, %2</translation>
    </message>
    <message>
        <source>left %1</source>
        <translation>links %1</translation>
    </message>
    <message>
        <source>right %1</source>
        <translation>rechts %1</translation>
    </message>
    <message>
        <source>Counted ratio between its neighbours</source>
        <translation>Gezählte Übersetzung zwischen ihren Nachbarn</translation>
    </message>
    <message>
        <source>nothing counted yet</source>
        <translation>noch nichts gezählt</translation>
    </message>
    <message>
        <source>not found</source>
        <translation>nicht gefunden</translation>
    </message>
    <message>
        <source>Answer</source>
        <translation>Antwort</translation>
    </message>
    <message>
        <source>Recordings read</source>
        <translation>Gelesene Aufzeichnungen</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Tables</source>
        <translation>Tabellen</translation>
    </message>
    <message>
        <source>All files</source>
        <translation>Alle Dateien</translation>
    </message>
    <message>
        <source>%1 against %2, %3 fills</source>
        <translation>%1 über %2, %3 Füllungen</translation>
    </message>
    <message>
        <source>Has a new pack run in?</source>
        <translation>Ist ein neues Paket eingelaufen?</translation>
    </message>
    <message>
        <source>1. Test again every few cycles (figure-eights, both ways) and tag each recording with their number: cycles=12.</source>
        <translation>1. Alle paar Zyklen (Achten, beide Richtungen) wieder prüfen und jeder Aufzeichnung deren Zahl als Merkmal geben: cycles=12.</translation>
    </message>
    <message>
        <source>2. Choose that tag on the left.</source>
        <translation>2. Dieses Merkmal links wählen.</translation>
    </message>
    <message>
        <source>It has settled when the change over the last ten values lies, with its whole interval, within ± 1 % per ten cycles. The table says what was known after each value.</source>
        <translation>Eingelaufen ist es, wenn die Änderung über die letzten zehn Werte mit ihrem ganzen Intervall innerhalb ± 1 % je zehn Zyklen liegt. Die Tabelle sagt, was nach jedem Wert bekannt war.</translation>
    </message>
    <message>
        <source>still moving</source>
        <translation>noch in Bewegung</translation>
    </message>
    <message>
        <source>too few yet</source>
        <translation>noch zu wenige</translation>
    </message>
    <message>
        <source>cannot be shown yet</source>
        <translation>noch nicht zu zeigen</translation>
    </message>
    <message>
        <source>How good is your own measuring?</source>
        <translation>Wie gut ist die eigene Messung?</translation>
    </message>
    <message>
        <source>1. Two operators or more test two axles or more, each of them twice or more, in mixed order. Nothing is changed between the tests.</source>
        <translation>1. Zwei Prüfer oder mehr prüfen zwei Achsen oder mehr, jede zweimal oder öfter, in gemischter Reihenfolge. Zwischen den Prüfungen wird nichts geändert.</translation>
    </message>
    <message>
        <source>2. Search for just these recordings. Each is one repeat; its tags or its job card name operator and axle.</source>
        <translation>2. Genau nach diesen Aufzeichnungen suchen. Jede ist eine Wiederholung; ihre Merkmale oder ihre Karte nennen Prüfer und Achse.</translation>
    </message>
    <message>
        <source>The answer: how far one reading can be trusted, and whether operators differ more than their own repeats do. Two transducers, or two operators, can also be set side by side, axle by axle.</source>
        <translation>Die Antwort: wie weit eine Ablesung gilt, und ob Prüfer sich mehr unterscheiden als ihre eigenen Wiederholungen. Zwei Aufnehmer oder zwei Prüfer lassen sich auch Achse für Achse nebeneinanderstellen.</translation>
    </message>
    <message>
        <source>breakaway (%1)</source>
        <translation>Losbrechmoment (%1)</translation>
    </message>
    <message>
        <source>rotating mean (%1)</source>
        <translation>Drehmoment in Bewegung, Mittel (%1)</translation>
    </message>
    <message>
        <source>Reading %1 recordings for %2</source>
        <translation>%1 Aufzeichnungen werden gelesen für %2</translation>
    </message>
    <message>
        <source>different test kinds: %1</source>
        <translation>verschiedene Arten der Prüfung: %1</translation>
    </message>
    <message>
        <source>different test kinds: %1.</source>
        <translation>verschiedene Arten der Prüfung: %1.</translation>
    </message>
    <message>
        <source>different places of the torque (axle, sensor): %1</source>
        <translation>verschiedene Orte des Drehmoments (Achse, Aufnehmer): %1</translation>
    </message>
    <message>
        <source>different fixtures: %1</source>
        <translation>verschiedene Vorrichtungen: %1</translation>
    </message>
    <message>
        <source>different sides: %1</source>
        <translation>verschiedene Seiten: %1</translation>
    </message>
    <message>
        <source>Save the report as</source>
        <translation>Bericht speichern als</translation>
    </message>
    <message>
        <source>Export to</source>
        <translation>Exportieren nach</translation>
    </message>
    <message>
        <source>Bytes</source>
        <translation>Bytes</translation>
    </message>
    <message>
        <source>Pull %1</source>
        <translation>Zug %1</translation>
    </message>
    <message>
        <source>excluded: %1</source>
        <translation>ausgeschlossen: %1</translation>
    </message>
    <message>
        <source>%1 cannot be read.</source>
        <translation>%1 ist nicht zu lesen.</translation>
    </message>
    <message>
        <source>pooled: %1</source>
        <translation>zusammengefasst: %1</translation>
    </message>
    <message>
        <source>stud circle</source>
        <translation>Lochkreis</translation>
    </message>
    <message>
        <source>Undone: %1.</source>
        <translation>Rückgängig gemacht: %1.</translation>
    </message>
    <message>
        <source>%1 for %2</source>
        <translation>%1 für %2</translation>
    </message>
    <message>
        <source>Undo what was decided about this pull</source>
        <translation>Rückgängig machen, was über diesen Zug entschieden wurde</translation>
    </message>
    <message>
        <source>Chance of showing it (power)</source>
        <translation>Wie sicher gezeigt (Trennschärfe)</translation>
    </message>
    <message>
        <source>torque %1</source>
        <translation>Drehmoment %1</translation>
    </message>
    <message>
        <source>torque %1, %2</source>
        <translation>Drehmoment %1, %2</translation>
    </message>
    <message>
        <source>chosen part: %1</source>
        <translation>gewähltes Teil: %1</translation>
    </message>
    <message>
        <source>holding %1 to %2</source>
        <translation>Halteregister %1 bis %2</translation>
    </message>
    <message>
        <source>A bar on these two has its middle %1 off the wheel's centre.</source>
        <translation>Ein Träger auf diesen beiden hat seine Mitte %1 neben der Radmitte.</translation>
    </message>
    <message>
        <source>In use: %1, as typed.</source>
        <translation>Verwendet: %1, wie eingegeben.</translation>
    </message>
    <message>
        <source>In use as measured.</source>
        <translation>Wie gemessen verwendet.</translation>
    </message>
    <message>
        <source>As measured</source>
        <translation>Wie gemessen</translation>
    </message>
    <message>
        <source>Offset %1</source>
        <translation>Versatz %1</translation>
    </message>
    <message>
        <source>%1: type it on the left.</source>
        <translation>%1: links eintippen.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1. Pulls are recorded, but no result is given.</source>
        <translation>Diese Prüfung sagt nichts über diese Bauart, %1. Züge werden aufgezeichnet, aber es gibt kein Ergebnis.</translation>
    </message>
    <message>
        <source>%1 could not be read</source>
        <translation>%1 nicht lesbar</translation>
    </message>
    <message>
        <source>Import a fixture</source>
        <translation>Vorrichtung importieren</translation>
    </message>
    <message>
        <source>Import a limit</source>
        <translation>Grenzwert importieren</translation>
    </message>
    <message>
        <source>Import a transducer</source>
        <translation>Aufnehmer importieren</translation>
    </message>
    <message>
        <source>Label</source>
        <translation>Etikett</translation>
    </message>
    <message>
        <source>A label with a QR code for the lever: print it, or scan one</source>
        <translation>Ein Etikett mit QR-Code für den Hebel: drucken, oder eines einlesen</translation>
    </message>
    <message>
        <source>Print a label …</source>
        <translation>Etikett drucken …</translation>
    </message>
    <message>
        <source>Save a label …</source>
        <translation>Etikett speichern …</translation>
    </message>
    <message>
        <source>Scan a label</source>
        <translation>Etikett einlesen</translation>
    </message>
    <message>
        <source>Scan the label now, or paste or type its line into the name.</source>
        <translation>Jetzt das Etikett einlesen, oder seine Zeile in den Namen einfügen oder tippen.</translation>
    </message>
    <message>
        <source>Filled from the label of %1</source>
        <translation>Ausgefüllt vom Etikett von %1</translation>
    </message>
    <message>
        <source>This fixture has faults; put them right first.</source>
        <translation>Diese Vorrichtung hat Fehler; diese zuerst beheben.</translation>
    </message>
    <message>
        <source>This label: no label of a fixture: its line begins with HELDWHEEL FIXTURE</source>
        <translation>Dieses Etikett: kein Etikett einer Vorrichtung; seine Zeile beginnt mit HELDWHEEL FIXTURE</translation>
    </message>
    <message>
        <source>This label: '%1' is in no label: it holds A to X, 0 to 9, blanks and points; is the scanner set to this keyboard?</source>
        <translation>Dieses Etikett: „%1“ steht auf keinem Etikett; es hat A bis X, 0 bis 9, Leerzeichen und Punkte. Ist der Leser auf diese Tastatur eingestellt?</translation>
    </message>
    <message>
        <source>This label: the line does not end with CHECK and five digits: scan or copy the whole of it</source>
        <translation>Dieses Etikett: Die Zeile endet nicht mit CHECK und fünf Ziffern; ganz einlesen oder abschreiben</translation>
    </message>
    <message>
        <source>This label: CHECK: the check number does not fit the line: a character is mistyped, missing or too many</source>
        <translation>Dieses Etikett: CHECK: Die Prüfzahl passt nicht zur Zeile; ein Zeichen ist vertippt, fehlt oder ist zu viel</translation>
    </message>
    <message>
        <source>This label: NAME: a Q stands alone in it; codes stand between two</source>
        <translation>Dieses Etikett: NAME: Ein Q steht allein darin; ein Code steht zwischen zweien</translation>
    </message>
    <message>
        <source>This label: NAME: '%1' is the code of no character</source>
        <translation>Dieses Etikett: NAME: „%1“ ist der Code keines Zeichens</translation>
    </message>
    <message>
        <source>This label: KIND: is none of a fixture; there are: %1</source>
        <translation>Dieses Etikett: KIND: ist keine Art einer Vorrichtung; es gibt: %1</translation>
    </message>
    <message>
        <source>This label: '%1' is no field of a fixture</source>
        <translation>Dieses Etikett: „%1“ ist kein Feld einer Vorrichtung</translation>
    </message>
    <message>
        <source>This label: '%1' is no field of a fixture after %2</source>
        <translation>Dieses Etikett: „%1“ ist nach %2 kein Feld einer Vorrichtung</translation>
    </message>
    <message>
        <source>This label: %1: stands twice</source>
        <translation>Dieses Etikett: %1: steht zweimal da</translation>
    </message>
    <message>
        <source>This label: %1: '%2' is no number</source>
        <translation>Dieses Etikett: %1: „%2“ ist keine Zahl</translation>
    </message>
    <message>
        <source>This label: %1: '%2' is no count</source>
        <translation>Dieses Etikett: %1: „%2“ ist keine Anzahl</translation>
    </message>
    <message>
        <source>name: is too long for a label; this fixture takes %1 characters of %2</source>
        <translation>Name: ist zu lang für ein Etikett; diese Vorrichtung braucht %1 Zeichen von %2</translation>
    </message>
    <message>
        <source>Index of these reports …</source>
        <translation>Verzeichnis dieser Berichte …</translation>
    </message>
    <message>
        <source>Index of reports</source>
        <translation>Verzeichnis der Berichte</translation>
    </message>
    <message>
        <source>What stands above the list</source>
        <translation>Was über der Liste steht</translation>
    </message>
    <message>
        <source>An index is being made</source>
        <translation>Ein Verzeichnis wird gemacht</translation>
    </message>
    <message>
        <source>%1 of %2 reports read for the index</source>
        <translation>%1 von %2 Berichten für das Verzeichnis gelesen</translation>
    </message>
    <message>
        <source>Index of one report written to %1</source>
        <translation>Verzeichnis eines Berichts geschrieben nach %1</translation>
    </message>
    <message>
        <source>Index of %1 reports written to %2</source>
        <translation>Verzeichnis von %1 Berichten geschrieben nach %2</translation>
    </message>
    <message>
        <source>Not listed: %1</source>
        <translation>Nicht aufgeführt: %1</translation>
    </message>
    <message>
        <source>%1: is no report written by this program, or its record was taken out</source>
        <translation>%1: ist kein Bericht dieses Programms, oder seine Angaben wurden entfernt</translation>
    </message>
    <message>
        <source>Not listed: %1: is no report written by this program, or its record was taken out</source>
        <translation>Nicht aufgeführt: %1: ist kein Bericht dieses Programms, oder seine Angaben wurden entfernt</translation>
    </message>
    <message>
        <source>%1: holds no report written by this program</source>
        <translation>%1: enthält keinen Bericht dieses Programms</translation>
    </message>
    <message>
        <source>Export this fixture</source>
        <translation>Diese Vorrichtung exportieren</translation>
    </message>
    <message>
        <source>Export this limit</source>
        <translation>Diesen Grenzwert exportieren</translation>
    </message>
    <message>
        <source>Export this transducer</source>
        <translation>Diesen Aufnehmer exportieren</translation>
    </message>
    <message>
        <source>Photographs of this test</source>
        <translation>Fotos dieser Prüfung</translation>
    </message>
    <message>
        <source>First lines of the file</source>
        <translation>Erste Zeilen der Datei</translation>
    </message>
    <message>
        <source>Bytes as they came</source>
        <translation>Bytes wie empfangen</translation>
    </message>
    <message>
        <source>Save the recording in another folder</source>
        <translation>Aufzeichnung in einem anderen Ordner speichern</translation>
    </message>
    <message>
        <source>different directions: %1</source>
        <translation>verschiedene Richtungen: %1</translation>
    </message>
    <message>
        <source>different wheel on and off: %1</source>
        <translation>mit und ohne Rad: %1</translation>
    </message>
    <message>
        <source>different transducers: %1</source>
        <translation>verschiedene Aufnehmer: %1</translation>
    </message>
    <message>
        <source>different operators: %1; a difference between groups may be theirs as well</source>
        <translation>verschiedene Prüfer: %1; ein Unterschied zwischen Gruppen kann auch ihrer sein</translation>
    </message>
    <message>
        <source>different fixtures: %1; a difference between groups may be theirs as well</source>
        <translation>verschiedene Vorrichtungen: %1; ein Unterschied zwischen Gruppen kann auch ihrer sein</translation>
    </message>
    <message>
        <source>different sides: %1; a difference between groups may be theirs as well</source>
        <translation>verschiedene Seiten: %1; ein Unterschied zwischen Gruppen kann auch ihrer sein</translation>
    </message>
    <message>
        <source>different directions: %1; a difference between groups may be theirs as well</source>
        <translation>verschiedene Richtungen: %1; ein Unterschied zwischen Gruppen kann auch ihrer sein</translation>
    </message>
    <message>
        <source>different transducers: %1; a difference between groups may be theirs as well</source>
        <translation>verschiedene Aufnehmer: %1; ein Unterschied zwischen Gruppen kann auch ihrer sein</translation>
    </message>
    <message>
        <source>oil between %1 and %2 °C on average: two different oils</source>
        <translation>Öl im Mittel zwischen %1 und %2 °C: zwei verschiedene Öle</translation>
    </message>
    <message>
        <source>oil between %1 and %2 °C on average from group to group</source>
        <translation>Öl im Mittel zwischen %1 und %2 °C von Gruppe zu Gruppe</translation>
    </message>
    <message>
        <source>speed between %1 and %2 on average from group to group</source>
        <translation>Tempo im Mittel zwischen %1 und %2 von Gruppe zu Gruppe</translation>
    </message>
    <message>
        <source>rest before the pull between %1 and %2 on average from group to group</source>
        <translation>Ruhe vor dem Zug im Mittel zwischen %1 und %2 von Gruppe zu Gruppe</translation>
    </message>
    <message>
        <source>other side held</source>
        <translation>andere Seite gehalten</translation>
    </message>
    <message>
        <source>Average</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Watch an axle from job to job.</source>
        <translation>Eine Achse von Auftrag zu Auftrag verfolgen.</translation>
    </message>
    <message>
        <source>The first jobs, known to be good, give level and scatter. After them a weighted average of the jobs is followed: a slow drift leaves its band within a few jobs, one odd job does not.</source>
        <translation>Die ersten Aufträge, von denen man weiß, dass sie gut sind, geben Niveau und Streuung. Danach wird ein gewichtetes Mittel der Aufträge verfolgt: eine langsame Drift verlässt sein Band nach wenigen Aufträgen, ein einzelner Ausreißer nicht.</translation>
    </message>
    <message>
        <source>Search for the axle's own recordings; four good jobs or more are needed.</source>
        <translation>Nach den Aufzeichnungen dieser Achse suchen; es braucht vier gute Aufträge oder mehr.</translation>
    </message>
    <message>
        <source>Plan before you test: how many fills does a comparison need?</source>
        <translation>Vor dem Prüfen planen: wie viele Füllungen braucht ein Vergleich?</translation>
    </message>
    <message>
        <source>1. The scatter from fill to fill: typed, or taken from recordings of three or four fills of one kind.</source>
        <translation>1. Die Streuung von Füllung zu Füllung: eingetippt oder aus Aufzeichnungen von drei oder vier Füllungen einer Art.</translation>
    </message>
    <message>
        <source>2. The difference that must not be missed, and how surely.</source>
        <translation>2. Der Unterschied, der nicht übersehen werden darf, und wie sicher.</translation>
    </message>
    <message>
        <source>3. The groups, the control first: their order of tests is drawn by lot within blocks, so that a warm day or a tired arm does not fall on one group.</source>
        <translation>3. Die Gruppen, die Vergleichsgruppe zuerst: die Reihenfolge der Prüfungen wird innerhalb von Blöcken ausgelost, damit ein warmer Tag oder ein müder Arm nicht eine Gruppe trifft.</translation>
    </message>
    <message>
        <source>More pulls of one fill do not replace another fill.</source>
        <translation>Mehr Züge einer Füllung ersetzen keine weitere Füllung.</translation>
    </message>
    <message>
        <source>rear</source>
        <translation>hinten</translation>
    </message>
    <message>
        <source>mean %1 of %2</source>
        <translation>Mittel %1 aus %2</translation>
    </message>
    <message>
        <source>95 % lie within ± %1</source>
        <translation>95 % liegen innerhalb ± %1</translation>
    </message>
    <message>
        <source>%1 fills per group</source>
        <translation>%1 Füllungen je Gruppe</translation>
    </message>
    <message>
        <source>%1: %2 values in order, %3</source>
        <translation>%1: %2 Werte der Reihe nach, %3</translation>
    </message>
    <message>
        <source>%1: %2 jobs, %3 out of band</source>
        <translation>%1: %2 Aufträge, %3 außerhalb des Bandes</translation>
    </message>
    <message>
        <source>Follow a torque against a number: shim thickness, distance, temperature, share of modifier.</source>
        <translation>Ein Moment über einer Zahl verfolgen: Dicke der Ausgleichsscheibe, Strecke, Temperatur, Anteil des Reibungszusatzes.</translation>
    </message>
    <message>
        <source>1. Give the recordings a tag that is a number, such as  shim_mm=0.3, or use what the job card states.</source>
        <translation>1. Den Aufzeichnungen ein Merkmal geben, das eine Zahl ist, etwa  shim_mm=0.3, oder nehmen, was die Karte sagt.</translation>
    </message>
    <message>
        <source>2. Choose it on the left. Then ask: which shim gives 60 N·m? What is to be expected at 1500 km?</source>
        <translation>2. Links wählen. Dann fragen: welche Scheibe ergibt 60 N·m? Was ist bei 1500 km zu erwarten?</translation>
    </message>
    <message>
        <source>The band holds one further fill in 95 of 100 cases; three fills or more are needed.</source>
        <translation>Das Band enthält eine weitere Füllung in 95 von 100 Fällen; es braucht drei Füllungen oder mehr.</translation>
    </message>
    <message>
        <source>Per 1 of %1: %2 (95 %: %3), a trend is shown.</source>
        <translation>Je 1 von %1: %2 (95 %: %3), ein Verlauf ist gezeigt.</translation>
    </message>
    <message>
        <source>Per 1 of %1: %2 (95 %: %3), no trend is shown.</source>
        <translation>Je 1 von %1: %2 (95 %: %3), kein Verlauf ist gezeigt.</translation>
    </message>
    <message>
        <source>shim, mm %1</source>
        <translation>Scheibe, mm %1</translation>
    </message>
    <message>
        <source>shim, mm for %1</source>
        <translation>Scheibe, mm, für %1</translation>
    </message>
    <message>
        <source>operator %1</source>
        <translation>Prüfer %1</translation>
    </message>
    <message>
        <source>%1  (and %2 more below)</source>
        <translation>%1  (und %2 weitere unten)</translation>
    </message>
    <message>
        <source>1,234.5 is one number</source>
        <translation>1,234.5 ist eine Zahl</translation>
    </message>
    <message>
        <source>It marks decimals: 12,5</source>
        <translation>Es trennt Dezimalen: 12,5</translation>
    </message>
    <message>
        <source>It stands between two numbers</source>
        <translation>Es steht zwischen zwei Zahlen</translation>
    </message>
    <message>
        <source>Say what it means</source>
        <translation>Sagen, was es bedeutet</translation>
    </message>
    <message>
        <source>Two numbers</source>
        <translation>Zwei Zahlen</translation>
    </message>
    <message>
        <source>How long it has been still</source>
        <translation>Wie lange es schon ruhig ist</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Last</translation>
    </message>
    <message>
        <source>Allowed</source>
        <translation>Erlaubt</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>Gezeigt</translation>
    </message>
    <message>
        <source>± at 95 %</source>
        <translation>± bei 95 %</translation>
    </message>
    <message>
        <source>Check workshop transducer</source>
        <translation>Aufnehmer der Werkstatt prüfen</translation>
    </message>
    <message>
        <source>Practise on the virtual transducer</source>
        <translation>Am virtuellen Aufnehmer üben</translation>
    </message>
    <message>
        <source>Practise on the virtual transducer (simulated)</source>
        <translation>Am virtuellen Aufnehmer üben (simuliert)</translation>
    </message>
    <message>
        <source>Steps of the check</source>
        <translation>Schritte der Prüfung mit Gewichten</translation>
    </message>
    <message>
        <source>From the centre of the drive to where the weight hangs.</source>
        <translation>Von der Mitte des Vierkants bis zum Hängepunkt.</translation>
    </message>
    <message>
        <source>Hang nothing. Hands off</source>
        <translation>Nichts auflegen. Hände weg</translation>
    </message>
    <message>
        <source>Hang nothing</source>
        <translation>Nichts auflegen</translation>
    </message>
    <message>
        <source>Measure now</source>
        <translation>Jetzt messen</translation>
    </message>
    <message>
        <source>Waiting for readings …</source>
        <translation>Warten auf Messwerte …</translation>
    </message>
    <message>
        <source>moves now</source>
        <translation>bewegt sich jetzt</translation>
    </message>
    <message>
        <source>Stud circle %1 = %2, standard uncertainty %3.</source>
        <translation>Lochkreis %1 = %2, Standardunsicherheit %3.</translation>
    </message>
    <message>
        <source>In use as measured; common circles near it:</source>
        <translation>Wie gemessen verwendet; übliche Lochkreise in der Nähe:</translation>
    </message>
    <message>
        <source>Put clutch plate on the card</source>
        <translation>Lamellen auf die Karte</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>next step</source>
        <translation>nächster Schritt</translation>
    </message>
    <message>
        <source>skip a step that may be skipped</source>
        <translation>einen Schritt auslassen, wo das geht</translation>
    </message>
    <message>
        <source>exclude the last pull, undo</source>
        <translation>letzten Zug ausschließen, rückgängig</translation>
    </message>
    <message>
        <source>far view, end the test</source>
        <translation>Fernansicht, Prüfung beenden</translation>
    </message>
    <message>
        <source>practise, dial reading</source>
        <translation>üben, Skala ablesen</translation>
    </message>
    <message>
        <source>1 to 6</source>
        <translation>1 bis 6</translation>
    </message>
    <message>
        <source>job, kind of test, fixture, axle, limit, transducer</source>
        <translation>Auftrag, Art der Prüfung, Vorrichtung, Achse, Grenzwert, Aufnehmer</translation>
    </message>
    <message>
        <source>Ctrl+1, 2, 3</source>
        <translation>Strg+1, 2, 3</translation>
    </message>
    <message>
        <source>Test, Review, Compare</source>
        <translation>Prüfung, Ansehen, Vergleich</translation>
    </message>
    <message>
        <source>F2, Delete, Ctrl+Z</source>
        <translation>F2, Entf, Strg+Z</translation>
    </message>
    <message>
        <source>on Review: rename, remove, undo</source>
        <translation>unter Ansehen: umbenennen, entfernen, rückgängig</translation>
    </message>
    <message>
        <source>0, +, −, arrows</source>
        <translation>0, +, −, Pfeile</translation>
    </message>
    <message>
        <source>on a trace: all of it, zoom, move</source>
        <translation>auf einer Kurve: ganz, größer, kleiner, verschieben</translation>
    </message>
    <message>
        <source>arrows, Return</source>
        <translation>Pfeile, Eingabe</translation>
    </message>
    <message>
        <source>on a picture of Compare: from point to point, open its recordings</source>
        <translation>auf einem Bild unter Vergleich: von Punkt zu Punkt, dessen Aufzeichnungen öffnen</translation>
    </message>
    <message>
        <source>Right button, Menu</source>
        <translation>Rechte Taste, Menü</translation>
    </message>
    <message>
        <source>copy or save a picture; what can be done with a recording</source>
        <translation>Bild kopieren oder speichern; was sich mit einer Aufzeichnung tun lässt</translation>
    </message>
    <message>
        <source>Ctrl+,</source>
        <translation>Strg+,</translation>
    </message>
    <message>
        <source>settings, About</source>
        <translation>Einstellungen, Über</translation>
    </message>
    <message>
        <source>put a message away</source>
        <translation>eine Meldung wegräumen</translation>
    </message>
    <message>
        <source>Ctrl+U, Ctrl+L</source>
        <translation>Strg+U, Strg+L</translation>
    </message>
    <message>
        <source>next unit, light or dark</source>
        <translation>nächste Einheit, hell oder dunkel</translation>
    </message>
    <message>
        <source>Ctrl++, Ctrl+−</source>
        <translation>Strg++, Strg+−</translation>
    </message>
    <message>
        <source>larger and smaller text</source>
        <translation>größerer und kleinerer Text</translation>
    </message>
    <message>
        <source>Save the guide as</source>
        <translation>Anleitung speichern als</translation>
    </message>
    <message>
        <source>%1. That rules out %2.</source>
        <translation>%1. Damit scheiden aus: %2.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1.</source>
        <translation>Diese Prüfung sagt nichts über diese Bauart, %1.</translation>
    </message>
    <message>
        <source>This test says nothing about this type of axle, %1. Pulls are recorded, but no result is given: put the type right on the Axle card, or a reason to judge it all the same.</source>
        <translation>Diese Prüfung sagt nichts über diese Bauart, %1. Züge werden aufgezeichnet, aber es gibt kein Ergebnis: Bauart auf der Karte Achse berichtigen, oder einen Grund angeben, trotzdem zu urteilen.</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral. Turn one wheel ten times by its chalk mark, and count the propshaft and the other wheel.</source>
        <translation>Beide Antriebsräder angehoben, Leerlauf. Ein Rad nach seinem Kreidestrich zehnmal drehen und Kardanwelle und anderes Rad zählen.</translation>
    </message>
    <message>
        <source>One wheel held: it counts 0, and the propshaft makes half of what it would with both: ratio = 2 × propshaft ÷ wheel.</source>
        <translation>Ein Rad gehalten: es zählt 0, und die Kardanwelle macht halb so viel wie mit beiden: Übersetzung = 2 × Kardanwelle ÷ Rad.</translation>
    </message>
    <message>
        <source>Both together: both count. Ratio = propshaft ÷ wheel.</source>
        <translation>Beide zusammen: beide zählen. Übersetzung = Kardanwelle ÷ Rad.</translation>
    </message>
    <message>
        <source>A wheel that turned backwards counts negative: the sum of both is what matters.</source>
        <translation>Ein rückwärts gedrehtes Rad zählt negativ: es kommt auf die Summe beider an.</translation>
    </message>
    <message>
        <source>Take the last saving or removing back</source>
        <translation>Letztes Speichern oder Entfernen zurücknehmen</translation>
    </message>
    <message>
        <source>What is in the axle: click a part, or add one behind it. Keep sides and order as they come out; never mix packs.</source>
        <translation>Was in der Achse ist: ein Teil anklicken oder eines dahinter einfügen. Seiten und Reihenfolge lassen, wie sie herauskommen; Pakete nie mischen.</translation>
    </message>
    <message>
        <source>%1: %2 more. Key Shift+Up</source>
        <translation>%1: %2 mehr. Taste Umschalt+Auf</translation>
    </message>
    <message>
        <source>Put %1 on the card, with its counts</source>
        <translation>%1 auf die Karte, mit den Zählungen</translation>
    </message>
    <message>
        <source>sheet of %1</source>
        <translation>Blatt vom %1</translation>
    </message>
    <message>
        <source>%1 l, %2</source>
        <translation>%1 l, %2</translation>
    </message>
    <message>
        <source>How the lever meets the wheel. It decides what the reading means at the axle.</source>
        <translation>Wie der Hebel am Rad sitzt. Das entscheidet, was die Ablesung an der Achse bedeutet.</translation>
    </message>
    <message>
        <source>Kind of fixture</source>
        <translation>Art der Vorrichtung</translation>
    </message>
    <message>
        <source>Name, to find it again</source>
        <translation>Name, um sie wiederzufinden</translation>
    </message>
    <message>
        <source>Not a usable fixture yet</source>
        <translation>Noch keine brauchbare Vorrichtung</translation>
    </message>
    <message>
        <source>Still needed: %1</source>
        <translation>Noch nötig: %1</translation>
    </message>
    <message>
        <source>Studs</source>
        <translation>Bolzen</translation>
    </message>
    <message>
        <source>long lever on five studs</source>
        <translation>langer Hebel auf fünf Bolzen</translation>
    </message>
    <message>
        <source>%1 of %2 filled in</source>
        <translation>%1 von %2 ausgefüllt</translation>
    </message>
    <message>
        <source>A whole number, such as 5</source>
        <translation>Eine ganze Zahl, etwa 5</translation>
    </message>
    <message>
        <source>Gear</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Gehalten</translation>
    </message>
    <message>
        <source>In the car</source>
        <translation>Im Auto</translation>
    </message>
    <message>
        <source>On the bench</source>
        <translation>Auf der Werkbank</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>Neutral</source>
        <translation>Leerlauf</translation>
    </message>
    <message>
        <source>Measure the drag of both wheels free first</source>
        <translation>Zuerst das Schleppmoment beider freien Räder messen</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Pulls wanted</source>
        <translation>Gewünschte Züge</translation>
    </message>
    <message>
        <source>Rest before each pull</source>
        <translation>Ruhe vor jedem Zug</translation>
    </message>
    <message>
        <source>Side turned</source>
        <translation>Gedrehte Seite</translation>
    </message>
    <message>
        <source>Vehicle and oil</source>
        <translation>Fahrzeug und Öl</translation>
    </message>
    <message>
        <source>What is tested, and how. Without the kind of test a limit cannot be compared.</source>
        <translation>Was geprüft wird und wie. Ohne die Art der Prüfung ist kein Grenzwert vergleichbar.</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>1.645 u, one-sided 95 %</source>
        <translation>1,645 u, einseitig 95 %</translation>
    </message>
    <message>
        <source>At least</source>
        <translation>Mindestens</translation>
    </message>
    <message>
        <source>At most</source>
        <translation>Höchstens</translation>
    </message>
    <message>
        <source>Condition</source>
        <translation>Bedingung</translation>
    </message>
    <message>
        <source>From your own manual or rule book, as printed there. Its source is kept with it.</source>
        <translation>Aus Ihrem eigenen Handbuch oder Reglement, wie dort gedruckt. Die Quelle bleibt dabei.</translation>
    </message>
    <message>
        <source>From … to …</source>
        <translation>Von … bis …</translation>
    </message>
    <message>
        <source>Guard band</source>
        <translation>Schutzabstand</translation>
    </message>
    <message>
        <source>Guarded acceptance</source>
        <translation>Annahme mit Sicherheit</translation>
    </message>
    <message>
        <source>Guarded rejection</source>
        <translation>Ablehnung mit Sicherheit</translation>
    </message>
    <message>
        <source>In gear ÷ neutral, at least</source>
        <translation>Im Gang ÷ Leerlauf, mindestens</translation>
    </message>
    <message>
        <source>No limit for this job</source>
        <translation>Kein Grenzwert für diesen Auftrag</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keiner</translation>
    </message>
    <message>
        <source>Not less than</source>
        <translation>Nicht weniger als</translation>
    </message>
    <message>
        <source>Not more than</source>
        <translation>Nicht mehr als</translation>
    </message>
    <message>
        <source>Page or section</source>
        <translation>Seite oder Abschnitt</translation>
    </message>
    <message>
        <source>Rule, agreed before the test</source>
        <translation>Regel, vor der Prüfung vereinbart</translation>
    </message>
    <message>
        <source>Second unit</source>
        <translation>Zweite Einheit</translation>
    </message>
    <message>
        <source>Simple acceptance</source>
        <translation>Einfache Annahme</translation>
    </message>
    <message>
        <source>Source: manual or rule, and edition</source>
        <translation>Quelle: Handbuch oder Regel, und Ausgabe</translation>
    </message>
    <message>
        <source>Test place</source>
        <translation>Prüfort</translation>
    </message>
    <message>
        <source>The same in a second unit, if printed</source>
        <translation>Dasselbe in einer zweiten Einheit, falls gedruckt</translation>
    </message>
    <message>
        <source>Three-way (usual)</source>
        <translation>Dreiwertig (üblich)</translation>
    </message>
    <message>
        <source>U, the 95 % interval</source>
        <translation>U, das 95-%-Intervall</translation>
    </message>
    <message>
        <source>Unit as printed</source>
        <translation>Einheit wie gedruckt</translation>
    </message>
    <message>
        <source>What it limits</source>
        <translation>Was er begrenzt</translation>
    </message>
    <message>
        <source>rear axle, used plates</source>
        <translation>Hinterachse, gebrauchte Lamellen</translation>
    </message>
    <message>
        <source>used plates, oil at 40 °C</source>
        <translation>gebrauchte Lamellen, Öl bei 40 °C</translation>
    </message>
    <message>
        <source>workshop manual, 2nd edition</source>
        <translation>Werkstatthandbuch, 2. Ausgabe</translation>
    </message>
    <message>
        <source>Add a photograph</source>
        <translation>Foto hinzufügen</translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation>Zurücklegen</translation>
    </message>
    <message>
        <source>%1 is on the card already.</source>
        <translation>%1 ist schon auf der Karte.</translation>
    </message>
    <message>
        <source>%1 is removed from the card; the file is still there.</source>
        <translation>%1 ist von der Karte entfernt; die Datei ist noch da.</translation>
    </message>
    <message>
        <source>Photographs (%1)</source>
        <translation>Fotos (%1)</translation>
    </message>
    <message>
        <source>Remove %1 from the card</source>
        <translation>%1 von der Karte entfernen</translation>
    </message>
    <message>
        <source>Taking in %1 …</source>
        <translation>%1 wird übernommen …</translation>
    </message>
    <message>
        <source>What %1 shows</source>
        <translation>Was %1 zeigt</translation>
    </message>
    <message>
        <source>how the wheel is held</source>
        <translation>wie das Rad gehalten wird</translation>
    </message>
    <message>
        <source>the axle's tag</source>
        <translation>das Achsschild</translation>
    </message>
    <message>
        <source>the lever on the wheel</source>
        <translation>der Hebel am Rad</translation>
    </message>
    <message>
        <source>the odometer</source>
        <translation>der Kilometerstand</translation>
    </message>
    <message>
        <source>Second transducer, recorded along</source>
        <translation>Zweiter Aufnehmer, mit aufgezeichnet</translation>
    </message>
    <message>
        <source>Its port or Bluetooth address</source>
        <translation>Sein Anschluss oder seine Bluetooth-Adresse</translation>
    </message>
    <message>
        <source>the wheel's angle</source>
        <translation>der Winkel des Rades</translation>
    </message>
    <message>
        <source>%1. Is the transducer switched on and near?</source>
        <translation>%1. Ist der Aufnehmer eingeschaltet und nah?</translation>
    </message>
    <message>
        <source>/dev/ttyUSB0, COM3, or as found below</source>
        <translation>/dev/ttyUSB0, COM3 oder wie unten gefunden</translation>
    </message>
    <message>
        <source>Asking the device what it sends …</source>
        <translation>Das Gerät wird gefragt, was es sendet …</translation>
    </message>
    <message>
        <source>Check with weights</source>
        <translation>Mit Gewichten prüfen</translation>
    </message>
    <message>
        <source>Descriptions that come with the program</source>
        <translation>Beschreibungen, die mitgeliefert sind</translation>
    </message>
    <message>
        <source>Found on this computer</source>
        <translation>Auf diesem Rechner gefunden</translation>
    </message>
    <message>
        <source>Hang known weights on an arm of known length</source>
        <translation>Bekannte Gewichte an einen Arm bekannter Länge hängen</translation>
    </message>
    <message>
        <source>How its bytes become readings, and what its numbers are worth.</source>
        <translation>Wie seine Bytes zu Ablesungen werden und was seine Zahlen wert sind.</translation>
    </message>
    <message>
        <source>Learn an unknown one</source>
        <translation>Einen unbekannten lernen</translation>
    </message>
    <message>
        <source>Listening for Bluetooth devices …</source>
        <translation>Es wird nach Bluetooth-Geräten gehört …</translation>
    </message>
    <message>
        <source>Look for ports or Bluetooth</source>
        <translation>Anschlüsse oder Bluetooth suchen</translation>
    </message>
    <message>
        <source>No transducer chosen.</source>
        <translation>Kein Aufnehmer gewählt.</translation>
    </message>
    <message>
        <source>Port or Bluetooth address</source>
        <translation>Anschluss oder Bluetooth-Adresse</translation>
    </message>
    <message>
        <source>What its numbers are worth</source>
        <translation>Was seine Zahlen wert sind</translation>
    </message>
    <message>
        <source>Space: next step    R: exclude last    F: close</source>
        <translation>Leertaste: nächster Schritt    R: letzten ausschließen    F: schließen</translation>
    </message>
    <message>
        <source>%1. Space bar</source>
        <translation>%1. Leertaste</translation>
    </message>
    <message>
        <source>Key D</source>
        <translation>Taste D</translation>
    </message>
    <message>
        <source>Key E</source>
        <translation>Taste E</translation>
    </message>
    <message>
        <source>Key F</source>
        <translation>Taste F</translation>
    </message>
    <message>
        <source>Key S</source>
        <translation>Taste S</translation>
    </message>
    <message>
        <source>Key R</source>
        <translation>Taste R</translation>
    </message>
    <message>
        <source>Key U</source>
        <translation>Taste U</translation>
    </message>
    <message>
        <source>Key P</source>
        <translation>Taste P</translation>
    </message>
    <message>
        <source>Key X</source>
        <translation>Taste X</translation>
    </message>
    <message>
        <source>Key 0</source>
        <translation>Taste 0</translation>
    </message>
    <message>
        <source>Key 6</source>
        <translation>Taste 6</translation>
    </message>
    <message>
        <source>Key Enter</source>
        <translation>Eingabetaste</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Taste %1</translation>
    </message>
    <message>
        <source>Keys 1 to 6</source>
        <translation>Tasten 1 bis 6</translation>
    </message>
    <message>
        <source>More pulls after all</source>
        <translation>Doch noch Züge</translation>
    </message>
    <message>
        <source>Skip to signing</source>
        <translation>Zum Unterschreiben springen</translation>
    </message>
    <message>
        <source>Space bar</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Stop after %1 of %2</source>
        <translation>Nach %1 von %2 aufhören</translation>
    </message>
    <message>
        <source>Without drag</source>
        <translation>Ohne Schleppmoment</translation>
    </message>
    <message>
        <source>Without second zero</source>
        <translation>Ohne zweite Null</translation>
    </message>
    <message>
        <source>none lost</source>
        <translation>nichts verloren</translation>
    </message>
    <message>
        <source>with a gap</source>
        <translation>mit Lücke</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>One sheet, PDF or HTML</source>
        <translation>Ein Blatt, PDF oder HTML</translation>
    </message>
    <message>
        <source>All pulls are made: take the zero again</source>
        <translation>Alle Züge sind gemacht: Null noch einmal nehmen</translation>
    </message>
    <message>
        <source>Both wheels free: turn one slowly, two turns</source>
        <translation>Beide Räder frei: eines langsam drehen, zwei Umdrehungen</translation>
    </message>
    <message>
        <source>Coach</source>
        <translation>Anleitung</translation>
    </message>
    <message>
        <source>Hands off: taking the zero, %1</source>
        <translation>Hände weg: Null wird genommen, %1</translation>
    </message>
    <message>
        <source>Let the lever hang free once more, then take the zero again</source>
        <translation>Hebel noch einmal frei hängen lassen, dann Null noch einmal nehmen</translation>
    </message>
    <message>
        <source>Let the lever hang free or take it off, then take the zero</source>
        <translation>Hebel frei hängen lassen oder abnehmen, dann Null nehmen</translation>
    </message>
    <message>
        <source>No signal: last reading</source>
        <translation>Kein Signal: letzte Ablesung</translation>
    </message>
    <message>
        <source>No signal: wait, do not pull</source>
        <translation>Kein Signal: warten, nicht ziehen</translation>
    </message>
    <message>
        <source>No transducer: connect again</source>
        <translation>Kein Aufnehmer: wieder verbinden</translation>
    </message>
    <message>
        <source>Seconds ago</source>
        <translation>Sekunden zuvor</translation>
    </message>
    <message>
        <source>Stretch of time shown</source>
        <translation>Gezeigte Zeitspanne</translation>
    </message>
    <message>
        <source>The reading moves: let the lever hang still</source>
        <translation>Die Anzeige bewegt sich: Hebel still hängen lassen</translation>
    </message>
    <message>
        <source>Torque at the axle</source>
        <translation>Drehmoment an der Achse</translation>
    </message>
    <message>
        <source>Torque at the axle, no zero yet</source>
        <translation>Drehmoment an der Achse, noch ohne Null</translation>
    </message>
    <message>
        <source>Torque shown by the transducer</source>
        <translation>Drehmoment, wie der Aufnehmer es zeigt</translation>
    </message>
    <message>
        <source>Highest: the highest torque at the axle since the pulls began, with the load that is on now; excluded pulls do not count. Wheel: how far it has turned since the lever was last loaded, clockwise positive, and how fast it turns now.</source>
        <translation>Höchstes: das höchste Drehmoment an der Achse seit Beginn der Züge, mit der Last von eben jetzt; ausgeschlossene Züge zählen nicht. Rad: wie weit es sich gedreht hat, seit der Hebel zuletzt belastet wurde, im Uhrzeigersinn positiv, und wie schnell es sich jetzt dreht.</translation>
    </message>
    <message>
        <source>%1 turns/min</source>
        <translation>%1 U/min</translation>
    </message>
    <message>
        <source>Wheel in this pull</source>
        <translation>Rad in diesem Zug</translation>
    </message>
    <message>
        <source>Highest: pull %1</source>
        <translation>Höchstes: Zug %1</translation>
    </message>
    <message>
        <source>Highest so far</source>
        <translation>Höchstes bisher</translation>
    </message>
    <message>
        <source>Direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>Pull</source>
        <translation>Zug</translation>
    </message>
    <message>
        <source>Pulls of this recording</source>
        <translation>Züge dieser Aufzeichnung</translation>
    </message>
    <message>
        <source>Excluded: %1</source>
        <translation>Ausgeschlossen: %1</translation>
    </message>
    <message>
        <source>No pull yet. Each pull is caught by itself: load the lever smoothly over two to three seconds, keep turning slowly while the wheel moves, ease the load off.</source>
        <translation>Noch kein Zug. Jeder Zug wird von selbst erfasst: Hebel in zwei bis drei Sekunden gleichmäßig belasten, langsam weiterdrehen, solange sich das Rad bewegt, Last langsam wegnehmen.</translation>
    </message>
    <message>
        <source>B is the breakaway torque, R the rotating torque, both at the axle.</source>
        <translation>B ist das Losbrechmoment, R das Drehmoment in Bewegung, beide an der Achse.</translation>
    </message>
    <message>
        <source>Rule: %1</source>
        <translation>Regel: %1</translation>
    </message>
    <message>
        <source>%1, median of %2 pulls</source>
        <translation>%1, Median von %2 Zügen</translation>
    </message>
    <message>
        <source>%1 recordings overlaid</source>
        <translation>%1 Aufzeichnungen übereinander</translation>
    </message>
    <message>
        <source>Against angle</source>
        <translation>Über dem Winkel</translation>
    </message>
    <message>
        <source>Below the trace</source>
        <translation>Unter der Kurve</translation>
    </message>
    <message>
        <source>Budget</source>
        <translation>Budget</translation>
    </message>
    <message>
        <source>Choose a recording on the left.</source>
        <translation>Wählen Sie links eine Aufzeichnung.</translation>
    </message>
    <message>
        <source>Choose several, with Ctrl or Shift, to lay them over each other. Everything you decide here is written beside the recording, with your reason; the recording itself is never changed.</source>
        <translation>Wählen Sie mehrere mit Strg oder Umschalt, um sie übereinander zu legen. Alles, was Sie hier entscheiden, steht neben der Aufzeichnung, mit Ihrem Grund; die Aufzeichnung selbst wird nie geändert.</translation>
    </message>
    <message>
        <source>Correct</source>
        <translation>Korrigieren</translation>
    </message>
    <message>
        <source>Details</source>
        <translation>Angaben</translation>
    </message>
    <message>
        <source>Move the marks of the chosen pull, with a reason</source>
        <translation>Die Marken des gewählten Zuges verschieben, mit Grund</translation>
    </message>
    <message>
        <source>Reading %1 (%2 MB) …</source>
        <translation>%1 wird gelesen (%2 MB) …</translation>
    </message>
    <message>
        <source>Tags, to find and compare it by</source>
        <translation>Merkmale, um sie zu finden und zu vergleichen</translation>
    </message>
    <message>
        <source>This recording has no angle of the wheel.</source>
        <translation>Diese Aufzeichnung hat keinen Radwinkel.</translation>
    </message>
    <message>
        <source>Pull %1, elastic line at the axle: %2 per degree, wind-up %3, play %4</source>
        <translation>Zug %1, elastische Gerade an der Achse: %2 je Grad, Verdrehung %3, Spiel %4</translation>
    </message>
    <message>
        <source>Pull %1, elastic line at the sensor: %2 per degree, wind-up %3, play %4</source>
        <translation>Zug %1, elastische Gerade am Aufnehmer: %2 je Grad, Verdrehung %3, Spiel %4</translation>
    </message>
    <message>
        <source>%1 turns a minute, %2 (%3 to %4)</source>
        <translation>%1 Umdrehungen je Minute, %2 (%3 bis %4)</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>too slow</source>
        <translation>zu langsam</translation>
    </message>
    <message>
        <source>too fast</source>
        <translation>zu schnell</translation>
    </message>
    <message>
        <source>Torque against the wheel's angle</source>
        <translation>Drehmoment über dem Radwinkel</translation>
    </message>
    <message>
        <source>Torque against the wheel's angle; “Whole trace” goes back to time</source>
        <translation>Drehmoment über dem Radwinkel; „Ganze Kurve“ führt zur Zeit zurück</translation>
    </message>
    <message>
        <source>Whole trace</source>
        <translation>Ganze Kurve</translation>
    </message>
    <message>
        <source>aligned at the first pull of each</source>
        <translation>am jeweils ersten Zug ausgerichtet</translation>
    </message>
    <message>
        <source>In gear ÷ neutral, rotating maxima, 95 %</source>
        <translation>Im Gang ÷ Leerlauf, Drehmoment-Maxima, 95 %</translation>
    </message>
    <message>
        <source>No fixture: Edit details gives the torque at the axle</source>
        <translation>Keine Vorrichtung: „Angaben ändern“ gibt das Drehmoment an der Achse</translation>
    </message>
    <message>
        <source>No value</source>
        <translation>Kein Wert</translation>
    </message>
    <message>
        <source>%1 at the axle, one pull</source>
        <translation>%1 an der Achse, ein Zug</translation>
    </message>
    <message>
        <source>%1 at the axle, median of %2 pulls</source>
        <translation>%1 an der Achse, Median von %2 Zügen</translation>
    </message>
    <message>
        <source>%1 cut off before being closed. Everything saved until then is here: choose the kind “Recovered”.</source>
        <translation>%1 abgebrochen. Alles bis dahin Gespeicherte ist hier: wählen Sie die Art „Gerettet“.</translation>
    </message>
    <message>
        <source>A page to sign: for an engineer, or for a customer</source>
        <translation>Eine Seite zum Unterschreiben: für den Ingenieur oder für den Kunden</translation>
    </message>
    <message>
        <source>CSV, or JSON</source>
        <translation>CSV oder JSON</translation>
    </message>
    <message>
        <source>Choose a recording first.</source>
        <translation>Erst eine Aufzeichnung wählen.</translation>
    </message>
    <message>
        <source>Engineer's page</source>
        <translation>Ingenieurseite</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Name of the recording</source>
        <translation>Name der Aufzeichnung</translation>
    </message>
    <message>
        <source>Page under another name …</source>
        <translation>Seite unter anderem Namen …</translation>
    </message>
    <message>
        <source>Remove %1?</source>
        <translation>%1 entfernen?</translation>
    </message>
    <message>
        <source>Rename</source>
        <translation>Umbenennen</translation>
    </message>
    <message>
        <source>Rename  (F2)</source>
        <translation>Umbenennen  (F2)</translation>
    </message>
    <message>
        <source>Remove  (Delete)</source>
        <translation>Entfernen  (Entf)</translation>
    </message>
    <message>
        <source>Undo %1  (Ctrl+Z)</source>
        <translation>Rückgängig: %1  (Strg+Z)</translation>
    </message>
    <message>
        <source>The folder answers slowly. Its recordings appear here as soon as it does.</source>
        <translation>Der Ordner antwortet langsam. Seine Aufzeichnungen erscheinen hier, sobald er es tut.</translation>
    </message>
    <message>
        <source>The two recordings are still being read. Press Report again when both are shown.</source>
        <translation>Die zwei Aufzeichnungen werden noch gelesen. Drücken Sie noch einmal Bericht, wenn beide zu sehen sind.</translation>
    </message>
    <message>
        <source>About</source>
        <translation>Über</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Anschrift</translation>
    </message>
    <message>
        <source>Authorised by</source>
        <translation>Freigegeben von</translation>
    </message>
    <message>
        <source>Choose a folder</source>
        <translation>Ordner wählen</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>Comma: 38,5</source>
        <translation>Komma: 38,5</translation>
    </message>
    <message>
        <source>Point: 38.5</source>
        <translation>Punkt: 38.5</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>For reports written from now on. Without a name here, a report shows the workshop that its recording names; without someone who authorises it, the line to sign on stays empty.</source>
        <translation>Für Berichte ab jetzt. Ohne Namen hier zeigt ein Bericht die Werkstatt, die seine Aufzeichnung nennt; ohne jemanden, der freigibt, bleibt die Zeile zum Unterschreiben leer.</translation>
    </message>
    <message>
        <source>Guide</source>
        <translation>Anleitung</translation>
    </message>
    <message>
        <source>How to make the test, and all keys: F1</source>
        <translation>So wird geprüft, und alle Tasten: F1</translation>
    </message>
    <message>
        <source>Language, from the next start on</source>
        <translation>Sprache, ab dem nächsten Start</translation>
    </message>
    <message>
        <source>New recordings go to</source>
        <translation>Neue Aufzeichnungen kommen nach</translation>
    </message>
    <message>
        <source>On every report</source>
        <translation>Auf jedem Bericht</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Textgröße</translation>
    </message>
    <message>
        <source>Torque in</source>
        <translation>Drehmoment in</translation>
    </message>
    <message>
        <source>Version, folders, what it is built on</source>
        <translation>Version, Ordner, worauf es gebaut ist</translation>
    </message>
    <message>
        <source>Window</source>
        <translation>Fenster</translation>
    </message>
    <message>
        <source>Write the whole path of a folder.</source>
        <translation>Den ganzen Pfad eines Ordners schreiben.</translation>
    </message>
    <message>
        <source>a stroke / begins a new line</source>
        <translation>ein Strich / beginnt eine neue Zeile</translation>
    </message>
    <message>
        <source>name at the head of the page</source>
        <translation>Name am Kopf der Seite</translation>
    </message>
    <message>
        <source>printed under the line to sign on</source>
        <translation>unter der Zeile zum Unterschreiben gedruckt</translation>
    </message>
    <message>
        <source>No pull counts, so there is no value.</source>
        <translation>Kein Zug zählt, also gibt es keinen Wert.</translation>
    </message>
    <message>
        <source>Trace, budget, report</source>
        <translation>Kurve, Budget, Bericht</translation>
    </message>
    <message>
        <source>%1 pulls count, %2 excluded, 95 % interval.</source>
        <translation>%1 Züge zählen, %2 ausgeschlossen, 95-%-Intervall.</translation>
    </message>
    <message>
        <source>The zero moved by %1 from start to end.</source>
        <translation>Die Null hat sich von Anfang bis Ende um %1 verschoben.</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>As last time: fixture, limit, transducer, kind of test</source>
        <translation>Wie letztes Mal: Vorrichtung, Grenzwert, Aufnehmer, Art der Prüfung</translation>
    </message>
    <message>
        <source>End the test first</source>
        <translation>Erst die Prüfung beenden</translation>
    </message>
    <message>
        <source>End the test without signing %1?</source>
        <translation>Die Prüfung beenden, ohne %1 zu unterschreiben?</translation>
    </message>
    <message>
        <source>its pull</source>
        <translation>ihren Zug</translation>
    </message>
    <message>
        <source>its %1 pulls</source>
        <translation>ihre %1 Züge</translation>
    </message>
    <message>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>There is no recording to write a page of.</source>
        <translation>Es gibt keine Aufzeichnung für eine Seite.</translation>
    </message>
    <message>
        <source>They stay in the recording and can be reviewed, but nobody has signed for them.</source>
        <translation>Sie bleiben in der Aufzeichnung und können angesehen werden, aber niemand hat dafür unterschrieben.</translation>
    </message>
    <message>
        <source>at %1</source>
        <translation>bei %1</translation>
    </message>
    <message>
        <source>moved %1</source>
        <translation>verschoben um %1</translation>
    </message>
    <message>
        <source>not judged: axle's type</source>
        <translation>nicht beurteilt: Bauart</translation>
    </message>
    <message>
        <source>%1. The test goes on; its result says so.</source>
        <translation>%1. Die Prüfung geht weiter; ihr Ergebnis sagt es.</translation>
    </message>
    <message>
        <source>Not recording</source>
        <translation>Keine Aufzeichnung läuft</translation>
    </message>
    <message>
        <source>Heldwheel measures; it does not declare a car safe or legal. The maker's manual, local rules and qualified people decide. One driven wheel in the air can still drive the car off its stand: engine off.</source>
        <translation>Heldwheel misst; es erklärt kein Auto für sicher oder zulässig. Es entscheiden das Handbuch des Herstellers, örtliche Regeln und Fachleute. Ein angetriebenes Rad in der Luft kann das Auto vom Bock fahren: Motor aus.</translation>
    </message>
    <message>
        <source>Two torques are wanted: the one that breaks the clutch pack away, and the one that keeps it rotating. Each pull is caught by itself, corrected for the lever, and compared with your limit.</source>
        <translation>Zwei Momente sind gesucht: das, bei dem das Lamellenpaket losbricht, und das, mit dem es sich weiterdreht. Jeder Zug wird von selbst erfasst, auf den Hebel umgerechnet und mit Ihrem Grenzwert verglichen.</translation>
    </message>
    <message>
        <source>Result: %1</source>
        <translation>Ergebnis: %1</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Save picture …</source>
        <translation>Bild speichern …</translation>
    </message>
    <message>
        <source>Choose another folder</source>
        <translation>Anderen Ordner wählen</translation>
    </message>
    <message>
        <source>Save elsewhere</source>
        <translation>Woanders speichern</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Time (s)</source>
        <translation>Zeit (s)</translation>
    </message>
    <message>
        <source>Steps of the test</source>
        <translation>Schritte der Prüfung</translation>
    </message>
    <message>
        <source>On paper, sheet by sheet</source>
        <translation>Auf Papier, Blatt für Blatt</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Drucken</translation>
    </message>
    <message>
        <source>Show in folder</source>
        <translation>Im Ordner zeigen</translation>
    </message>
    <message>
        <source>With the program that this kind of file opens with</source>
        <translation>Mit dem Programm für diese Art Datei</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Geschrieben: %1</translation>
    </message>
    <message>
        <source>excluded by hand</source>
        <translation>von Hand ausgeschlossen</translation>
    </message>
    <message>
        <source>made before the new zero</source>
        <translation>vor der neuen Null gemacht</translation>
    </message>
    <message>
        <source>fill=2, shim=0.2</source>
        <translation>fill=2, shim=0,2</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Dezimalzeichen</translation>
    </message>
    <message>
        <source>p. 12</source>
        <translation>S. 12</translation>
    </message>
    <message>
        <source>Near the limit</source>
        <translation>Nahe am Grenzwert</translation>
    </message>
    <message>
        <source>15 s</source>
        <translation>15 s</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>unterschrieben</translation>
    </message>
    <message>
        <source>%1 corrections</source>
        <translation>%1 Korrekturen</translation>
    </message>
    <message>
        <source>%1 correction</source>
        <translation>%1 Korrektur</translation>
    </message>
    <message>
        <source>a job</source>
        <translation>ein Auftrag</translation>
    </message>
    <message>
        <source>right wheel</source>
        <translation>rechtes Rad</translation>
    </message>
    <message>
        <source>left wheel</source>
        <translation>linkes Rad</translation>
    </message>
    <message>
        <source>Clutch plate</source>
        <translation>Lamellen</translation>
    </message>
    <message>
        <source>reading × %1</source>
        <translation>Ablesung × %1</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>Mindestens %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>Höchstens %1</translation>
    </message>
    <message>
        <source>Rotating mean: %1</source>
        <translation>Drehmoment in Bewegung, Mittel: %1</translation>
    </message>
    <message>
        <source>Rotating maximum: %1</source>
        <translation>Drehmoment in Bewegung, Maximum: %1</translation>
    </message>
    <message>
        <source>Breakaway: %1</source>
        <translation>Losbrechmoment: %1</translation>
    </message>
    <message>
        <source>Import a trace</source>
        <translation>Kurve importieren</translation>
    </message>
    <message>
        <source>Other folder</source>
        <translation>Anderer Ordner</translation>
    </message>
    <message>
        <source>Refresh</source>
        <translation>Neu lesen</translation>
    </message>
    <message>
        <source>Look at recordings somewhere else</source>
        <translation>Aufzeichnungen anderswo ansehen</translation>
    </message>
    <message>
        <source>Read the folder again</source>
        <translation>Den Ordner noch einmal lesen</translation>
    </message>
    <message>
        <source>A CSV file from elsewhere: choose its columns and unit</source>
        <translation>Eine CSV-Datei von anderswo: Spalten und Einheit wählen</translation>
    </message>
    <message>
        <source>three-way, guard band w = %1</source>
        <translation>drei Ergebnisse, Schutzabstand w = %1</translation>
    </message>
    <message>
        <source>Transducer live</source>
        <translation>Aufnehmer verbunden</translation>
    </message>
    <message>
        <source>Transducer not connected</source>
        <translation>Aufnehmer nicht verbunden</translation>
    </message>
    <message>
        <source>%1 readings/s</source>
        <translation>%1 Ablesungen/s</translation>
    </message>
    <message>
        <source>Recording: %1 readings</source>
        <translation>Aufzeichnung: %1 Ablesungen</translation>
    </message>
    <message>
        <source>At the axle</source>
        <translation>An der Achse</translation>
    </message>
    <message>
        <source>As shown</source>
        <translation>Wie gezeigt</translation>
    </message>
    <message>
        <source>The &amp;build</source>
        <translation>Der A&amp;ufbau</translation>
    </message>
    <message>
        <source>What is in the axle: click a part, or add one behind it. Keep sides and order; never mix packs.</source>
        <translation>Was in der Achse ist: ein Teil anklicken oder dahinter eines hinzufügen. Seiten und Reihenfolge beibehalten; Pakete nie mischen.</translation>
    </message>
    <message>
        <source>Give the axle a tag first (What is known): its builds are kept under it, beside the recordings.</source>
        <translation>Der Achse zuerst eine Kennung geben (Was bekannt ist): darunter liegen ihre Aufbauten, bei den Aufnahmen.</translation>
    </message>
    <message>
        <source>Why it was opened</source>
        <translation>Warum sie geöffnet wurde</translation>
    </message>
    <message>
        <source>low breakaway</source>
        <translation>Losbrechen zu niedrig</translation>
    </message>
    <message>
        <source>Built by</source>
        <translation>Aufgebaut von</translation>
    </message>
    <message>
        <source>End play left</source>
        <translation>Axialspiel links</translation>
    </message>
    <message>
        <source>End play right</source>
        <translation>Axialspiel rechts</translation>
    </message>
    <message>
        <source>Preload spring</source>
        <translation>Vorspannfeder</translation>
    </message>
    <message>
        <source>two disc springs, face to face</source>
        <translation>zwei Tellerfedern, gegeneinander</translation>
    </message>
    <message>
        <source>Its load on each pack</source>
        <translation>Ihre Kraft auf jedes Paket</translation>
    </message>
    <message>
        <source>Friction faces, outer diameter</source>
        <translation>Reibflächen, Außendurchmesser</translation>
    </message>
    <message>
        <source>Friction faces, inner diameter</source>
        <translation>Reibflächen, Innendurchmesser</translation>
    </message>
    <message>
        <source>Preload torque at the pinion</source>
        <translation>Reibmoment am Ritzel durch Vorspannung</translation>
    </message>
    <message>
        <source>Amount of oil</source>
        <translation>Ölmenge</translation>
    </message>
    <message>
        <source>Its amount, or share of the fill</source>
        <translation>Seine Menge oder sein Anteil an der Füllung</translation>
    </message>
    <message>
        <source>50 ml or 4 %</source>
        <translation>50 ml oder 4 %</translation>
    </message>
    <message>
        <source>modifier B</source>
        <translation>Zusatz B</translation>
    </message>
    <message>
        <source>Discs soaked for</source>
        <translation>Lamellen eingelegt für</translation>
    </message>
    <message>
        <source>Soaked in</source>
        <translation>Eingelegt in</translation>
    </message>
    <message>
        <source>the oil that goes in</source>
        <translation>das Öl, das hineinkommt</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>plate 3 turned round</source>
        <translation>Stahllamelle 3 gewendet</translation>
    </message>
    <message>
        <source>Which build</source>
        <translation>Welcher Aufbau</translation>
    </message>
    <message>
        <source>A new one</source>
        <translation>Ein neuer</translation>
    </message>
    <message>
        <source>Thickness of the picked part</source>
        <translation>Dicke des gewählten Teils</translation>
    </message>
    <message>
        <source>Its state</source>
        <translation>Sein Zustand</translation>
    </message>
    <message>
        <source>new, worn …</source>
        <translation>neu, verschlissen …</translation>
    </message>
    <message>
        <source>+ friction disc</source>
        <translation>+ Reiblamelle</translation>
    </message>
    <message>
        <source>+ steel plate</source>
        <translation>+ Stahllamelle</translation>
    </message>
    <message>
        <source>+ disc spring</source>
        <translation>+ Tellerfeder</translation>
    </message>
    <message>
        <source>+ shim</source>
        <translation>+ Ausgleichsscheibe</translation>
    </message>
    <message>
        <source>Inwards</source>
        <translation>Nach innen</translation>
    </message>
    <message>
        <source>Outwards</source>
        <translation>Nach außen</translation>
    </message>
    <message>
        <source>Change places, towards the side gear</source>
        <translation>Platz tauschen, zum Achswellenrad hin</translation>
    </message>
    <message>
        <source>Change places, away from the side gear</source>
        <translation>Platz tauschen, vom Achswellenrad weg</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Takes the picked part out. Delete</source>
        <translation>Nimmt das gewählte Teil heraus. Entf</translation>
    </message>
    <message>
        <source>Same on both sides</source>
        <translation>Auf beiden Seiten gleich</translation>
    </message>
    <message>
        <source>Builds the other side like this one</source>
        <translation>Baut die andere Seite wie diese auf</translation>
    </message>
    <message>
        <source>Keep this build</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Spring, faces, pinion</source>
        <translation>Feder, Reibflächen, Ritzel</translation>
    </message>
    <message>
        <source>Oil, modifier, soak</source>
        <translation>Öl, Zusatz, Einlegen</translation>
    </message>
    <message>
        <source>Who, notes</source>
        <translation>Wer, Notizen</translation>
    </message>
    <message>
        <source>This build has faults; put them right first.</source>
        <translation>Dieser Aufbau hat Fehler; diese zuerst beheben.</translation>
    </message>
    <message>
        <source>Kept as the build of %1 of axle %2.</source>
        <translation>Behalten als Aufbau vom %1 der Achse %2.</translation>
    </message>
    <message>
        <source>Nothing is otherwise than in %1.</source>
        <translation>Nichts ist anders als im Aufbau vom %1.</translation>
    </message>
    <message>
        <source>Case above, side gears below; not to scale</source>
        <translation>Gehäuse oben, Achswellenräder unten; nicht maßstäblich</translation>
    </message>
    <message>
        <source>When it is tested again</source>
        <translation>Wann sie wieder geprüft wird</translation>
    </message>
    <message>
        <source>Test it again every</source>
        <translation>Wieder prüfen alle</translation>
    </message>
    <message>
        <source>500 km, 4 weeks, 2 events, 10 figure-eights</source>
        <translation>500 km, 4 weeks, 2 events, 10 figure-eights (englisch)</translation>
    </message>
    <message>
        <source>It has run (odometer, events, figure-eights)</source>
        <translation>Sie ist gelaufen (Kilometerstand, Einsätze, Achten)</translation>
    </message>
    <message>
        <source>53214 km, 1 event</source>
        <translation>53214 km, 1 event (englisch)</translation>
    </message>
    <message>
        <source>Note it</source>
        <translation>Vermerken</translation>
    </message>
    <message>
        <source>Kept with today's day</source>
        <translation>Wird mit dem heutigen Tag behalten</translation>
    </message>
    <message>
        <source>The schedule is kept.</source>
        <translation>Der Plan ist behalten.</translation>
    </message>
    <message>
        <source>Noted with today's day.</source>
        <translation>Mit dem heutigen Tag vermerkt.</translation>
    </message>
    <message>
        <source>Axle %1 is due for a test: %2.</source>
        <translation>Achse %1 ist zur Prüfung fällig: %2.</translation>
    </message>
    <message>
        <source>%1 more: heldwheel-read due lists them.</source>
        <translation>%1 weitere: heldwheel-read due nennt sie.</translation>
    </message>
    <message>
        <source>No transducer at hand</source>
        <translation>Kein Aufnehmer zur Hand</translation>
    </message>
    <message>
        <source>A virtual transducer pulls for you on a simulated axle. All of it is marked as simulated.</source>
        <translation>Ein virtueller Aufnehmer zieht für Sie an einer simulierten Achse. Alles davon ist als simuliert gekennzeichnet.</translation>
    </message>
    <message>
        <source>With a transducer</source>
        <translation>Mit einem Aufnehmer</translation>
    </message>
    <message>
        <source>Bluetooth, serial port or Modbus. Choose it once; it is kept in your list.</source>
        <translation>Bluetooth, serielle Schnittstelle oder Modbus. Einmal wählen; er bleibt in Ihrer Liste.</translation>
    </message>
    <message>
        <source>With a dial wrench</source>
        <translation>Mit einem Drehmomentschlüssel mit Skale</translation>
    </message>
    <message>
        <source>Read the dial and type it in: the same lever, interval and limit apply.</source>
        <translation>Skale ablesen und eintippen: Es gelten derselbe Hebel, dasselbe Intervall und derselbe Grenzwert.</translation>
    </message>
    <message>
        <source>Key 1</source>
        <translation>Taste 1</translation>
    </message>
    <message>
        <source>Key 2</source>
        <translation>Taste 2</translation>
    </message>
    <message>
        <source>Key 3</source>
        <translation>Taste 3</translation>
    </message>
    <message>
        <source>Key 4</source>
        <translation>Taste 4</translation>
    </message>
    <message>
        <source>Key 5</source>
        <translation>Taste 5</translation>
    </message>
    <message>
        <source>two to three seconds</source>
        <translation>zwei bis drei Sekunden</translation>
    </message>
    <message>
        <source>your limit: at least this</source>
        <translation>Ihr Grenzwert: mindestens so viel</translation>
    </message>
    <message>
        <source>Keep turning slowly</source>
        <translation>Langsam weiterdrehen</translation>
    </message>
    <message>
        <source>B  breakaway torque</source>
        <translation>B  Losbrechmoment</translation>
    </message>
    <message>
        <source>keep hold</source>
        <translation>festhalten</translation>
    </message>
    <message>
        <source>No vehicle yet</source>
        <translation>Noch kein Fahrzeug</translation>
    </message>
    <message>
        <source>two turns for a steady value</source>
        <translation>zwei Umdrehungen für einen ruhigen Wert</translation>
    </message>
    <message>
        <source>Ease off</source>
        <translation>Nachlassen</translation>
    </message>
    <message>
        <source>R  rotating torque</source>
        <translation>R  Drehmoment in Bewegung</translation>
    </message>
    <message>
        <source>Practice car</source>
        <translation>Übungsfahrzeug</translation>
    </message>
    <message>
        <source>practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Limit, %1</source>
        <translation>Grenzwert, %1</translation>
    </message>
    <message>
        <source>invented for practice, no manual</source>
        <translation>zum Üben erfunden, kein Handbuch</translation>
    </message>
    <message>
        <source>three-way, guard band w = U (95 %)</source>
        <translation>drei Ergebnisse, Schutzabstand w = U (95 %)</translation>
    </message>
    <message>
        <source>Breakaway, 1 pull</source>
        <translation>Losbrechmoment, 1 Zug</translation>
    </message>
    <message>
        <source>battery low</source>
        <translation>Batterie schwach</translation>
    </message>
    <message>
        <source>The disk is full: the recording could not be written further. %1 samples are safe on disk.</source>
        <translation>Der Datenträger ist voll: Die Aufzeichnung konnte nicht weitergeschrieben werden. %1 Messwerte sind sicher gespeichert.</translation>
    </message>
    <message>
        <source>Transducer disconnected</source>
        <translation>Aufnehmer getrennt</translation>
    </message>
    <message>
        <source>The transducer went away: unplugged or out of range. %1 samples are safe on disk.</source>
        <translation>Der Aufnehmer ist weg: ausgesteckt oder außer Reichweite. %1 Messwerte sind sicher gespeichert.</translation>
    </message>
    <message>
        <source>Heldwheel, far view</source>
        <translation>Heldwheel, Fernansicht</translation>
    </message>
    <message>
        <source>grade</source>
        <translation>Klasse</translation>
    </message>
    <message>
        <source>Photographs  ·  %1</source>
        <translation>Fotos  ·  %1</translation>
    </message>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
    <message>
        <source>Copied beside the recordings and named with their hash. Worth a picture: the axle's tag, how the wheel is held, the lever on the wheel, the odometer.</source>
        <translation>Neben die Aufzeichnungen kopiert und nach ihrer Prüfsumme benannt. Ein Bild wert: Schild der Achse, wie das Rad gehalten wird, Hebel am Rad, Kilometerzähler.</translation>
    </message>
    <message>
        <source>Leaves the file where it is</source>
        <translation>Lässt die Datei, wo sie ist</translation>
    </message>
    <message>
        <source>What is &amp;known</source>
        <translation>Was be&amp;kannt ist</translation>
    </message>
    <message>
        <source>&amp;Count the turns</source>
        <translation>Umdrehungen &amp;zählen</translation>
    </message>
    <message>
        <source>&amp;Find the type</source>
        <translation>Bauart &amp;finden</translation>
    </message>
    <message>
        <source>Cone</source>
        <translation>Kegel</translation>
    </message>
    <message>
        <source>Ramp plate</source>
        <translation>Lamellen mit Rampen</translation>
    </message>
    <message>
        <source>Helical or worm gear</source>
        <translation>Schräg- oder Schneckenräder</translation>
    </message>
    <message>
        <source>Viscous or fluid coupling</source>
        <translation>Visko- oder Flüssigkeitskupplung</translation>
    </message>
    <message>
        <source>Automatic locker</source>
        <translation>Selbsttätige Sperre</translation>
    </message>
    <message>
        <source>Governor-locking with light plates</source>
        <translation>Fliehkraftsperre mit leichten Lamellen</translation>
    </message>
    <message>
        <source>Welded or spool</source>
        <translation>Verschweißt oder starr durchgehend</translation>
    </message>
    <message>
        <source>Ratio by turns</source>
        <translation>Übersetzung aus Umdrehungen</translation>
    </message>
    <message>
        <source>Type by what the wheels do</source>
        <translation>Bauart nach dem Verhalten der Räder</translation>
    </message>
    <message>
        <source>A low number on the wrong type means nothing. Five things to try tell what it is.</source>
        <translation>Eine kleine Zahl an der falschen Bauart sagt nichts. Fünf Versuche zeigen, was es ist.</translation>
    </message>
    <message>
        <source>&amp;Propshaft turns</source>
        <translation>Umdrehungen der &amp;Gelenkwelle</translation>
    </message>
    <message>
        <source>&amp;Left wheel</source>
        <translation>&amp;Linkes Rad</translation>
    </message>
    <message>
        <source>&amp;Right wheel</source>
        <translation>&amp;Rechtes Rad</translation>
    </message>
    <message>
        <source>Propshaft turns</source>
        <translation>Umdrehungen der Kardanwelle</translation>
    </message>
    <message>
        <source>Left wheel</source>
        <translation>Linkes Rad</translation>
    </message>
    <message>
        <source>Right wheel</source>
        <translation>Rechtes Rad</translation>
    </message>
    <message>
        <source>%1: one less, or backwards. Key Down</source>
        <translation>%1: eine weniger, oder rückwärts. Taste Ab</translation>
    </message>
    <message>
        <source>%1: 1/8 more. Key Shift+Up</source>
        <translation>%1: 1/8 mehr. Tasten Umschalt+Auf</translation>
    </message>
    <message>
        <source>%1: 1/2 more. Key Shift+Up</source>
        <translation>%1: 1/2 mehr. Tasten Umschalt+Auf</translation>
    </message>
    <message>
        <source>%1: one more. Key Up</source>
        <translation>%1: eine mehr. Taste Auf</translation>
    </message>
    <message>
        <source>%1: held, so 0</source>
        <translation>%1: gehalten, also 0</translation>
    </message>
    <message>
        <source>0 if held</source>
        <translation>0, wenn gehalten</translation>
    </message>
    <message>
        <source>Ratio %1, between %2 and %3 by counting error</source>
        <translation>Übersetzung %1, wegen des Zählfehlers zwischen %2 und %3</translation>
    </message>
    <message>
        <source>One wheel held: %1 (half count: the other wheel was held)</source>
        <translation>Ein Rad gehalten: %1 (halbe Zählung: das andere Rad war gehalten)</translation>
    </message>
    <message>
        <source>Count a&amp;new</source>
        <translation>&amp;Neu zählen</translation>
    </message>
    <message>
        <source>Empties the counts; the card keeps what it has</source>
        <translation>Leert die Zählung; die Karte behält, was sie hat</translation>
    </message>
    <message>
        <source>Not settled: %1 ratios lie inside. Count %2 wheel turns to tell the two nearest ratios apart.</source>
        <translation>Nicht entschieden: %1 Übersetzungen liegen darin. %2 Radumdrehungen zählen, um die beiden nächsten zu unterscheiden.</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>%1 as counted</source>
        <translation>%1 wie gezählt</translation>
    </message>
    <message>
        <source>If the other wheel was not held but turned with it, the same counts would mean %1; if it turned backwards, more than %2. Count both wheels. Tags can be wrong after a swap; counted teeth, ring ÷ pinion, are exact.</source>
        <translation>Wurde das andere Rad nicht gehalten, sondern drehte mit, so bedeutet dieselbe Zählung %1; drehte es rückwärts, mehr als %2. Beide Räder zählen. Schilder können nach einem Tausch falsch sein; gezählte Zähne, Tellerrad ÷ Kegelrad, sind genau.</translation>
    </message>
    <message>
        <source>Propshaft is read</source>
        <translation>Gelenkwelle abgelesen auf</translation>
    </message>
    <message>
        <source>Wheels are read</source>
        <translation>Räder abgelesen auf</translation>
    </message>
    <message>
        <source>Compare with these only</source>
        <translation>Nur hiermit vergleichen</translation>
    </message>
    <message>
        <source>3.08  3.55  41/11; empty for the usual ones</source>
        <translation>3.08  3.55  41/11; leer für die üblichen</translation>
    </message>
    <message>
        <source>Name of this list</source>
        <translation>Name dieser Liste</translation>
    </message>
    <message>
        <source>rear axles of the club</source>
        <translation>Hinterachsen des Vereins</translation>
    </message>
    <message>
        <source>Saved ratio lists</source>
        <translation>Gespeicherte Übersetzungslisten</translation>
    </message>
    <message>
        <source>Saved fixtures</source>
        <translation>Gespeicherte Vorrichtungen</translation>
    </message>
    <message>
        <source>Saved limits</source>
        <translation>Gespeicherte Grenzwerte</translation>
    </message>
    <message>
        <source>Saved transducers</source>
        <translation>Gespeicherte Aufnehmer</translation>
    </message>
    <message>
        <source>Keep it in the list under its name</source>
        <translation>Unter seinem Namen in der Liste behalten</translation>
    </message>
    <message>
        <source>Read it from a TOML file</source>
        <translation>Aus einer TOML-Datei lesen</translation>
    </message>
    <message>
        <source>Write it to a TOML file for somebody else</source>
        <translation>In eine TOML-Datei für jemand anderen schreiben</translation>
    </message>
    <message>
        <source>Remove the picked one from the list</source>
        <translation>Den gewählten Eintrag aus der Liste entfernen</translation>
    </message>
    <message>
        <source>The list is as it was before</source>
        <translation>Die Liste ist wie zuvor</translation>
    </message>
    <message>
        <source>Ask this again</source>
        <translation>Noch einmal fragen</translation>
    </message>
    <message>
        <source>What the answers fit</source>
        <translation>Wozu die Antworten passen</translation>
    </message>
    <message>
        <source>Not tried</source>
        <translation>Nicht versucht</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>It turns the same way</source>
        <translation>Es dreht gleich herum</translation>
    </message>
    <message>
        <source>It turns the other way</source>
        <translation>Es dreht andersherum</translation>
    </message>
    <message>
        <source>A few degrees</source>
        <translation>Ein paar Grad</translation>
    </message>
    <message>
        <source>Very much harder than in neutral</source>
        <translation>Sehr viel schwerer als im Leerlauf</translation>
    </message>
    <message>
        <source>The other turns the opposite way, easily</source>
        <translation>Das andere dreht leicht entgegengesetzt</translation>
    </message>
    <message>
        <source>Hardly any resistance, drag only</source>
        <translation>Kaum Widerstand, nur Schleppen</translation>
    </message>
    <message>
        <source>A firm, even drag once it has broken away</source>
        <translation>Nach dem Losbrechen ein fester, gleichmäßiger Widerstand</translation>
    </message>
    <message>
        <source>A light, even drag</source>
        <translation>Ein leichter, gleichmäßiger Widerstand</translation>
    </message>
    <message>
        <source>It gets stiffer with speed, or with time; no breakaway</source>
        <translation>Es wird mit der Drehzahl oder der Zeit steifer; kein Losbrechen</translation>
    </message>
    <message>
        <source>Free one way, locks when moved back</source>
        <translation>In einer Richtung frei, sperrt beim Zurückdrehen</translation>
    </message>
    <message>
        <source>It cannot be turned</source>
        <translation>Es lässt sich nicht drehen</translation>
    </message>
    <message>
        <source>Both brakes are free</source>
        <translation>Beide Bremsen sind frei</translation>
    </message>
    <message>
        <source>%1 or %2</source>
        <translation>%1 oder %2</translation>
    </message>
    <message>
        <source>What was seen fits: %1.</source>
        <translation>Was zu sehen war, passt zu: %1.</translation>
    </message>
    <message>
        <source>Nothing fits what was seen.</source>
        <translation>Nichts passt zu dem, was zu sehen war.</translation>
    </message>
    <message>
        <source>This torque says nothing about it</source>
        <translation>Dieses Moment sagt darüber nichts</translation>
    </message>
    <message>
        <source>Next to each other</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <source>One stud between</source>
        <translation>Ein Bolzen dazwischen</translation>
    </message>
    <message>
        <source>Within or outside only if the whole guarded interval lies on one side of the limit; otherwise too close to call; risk of a wrong within or outside below 2.5 %.</source>
        <translation>Innerhalb oder außerhalb nur, wenn das ganze Intervall mit Schutzabstand auf einer Seite des Grenzwerts liegt; sonst zu knapp; Risiko eines falschen Innerhalb oder Außerhalb unter 2,5 %.</translation>
    </message>
    <message>
        <source>Choose one</source>
        <translation>Einen wählen</translation>
    </message>
    <message>
        <source>For one without a description: listen while it is loaded and unloaded</source>
        <translation>Für einen ohne Beschreibung: zuhören, während er belastet und entlastet wird</translation>
    </message>
    <message>
        <source>Ports</source>
        <translation>Anschlüsse</translation>
    </message>
    <message>
        <source>Lists serial ports; opens none and sends nothing</source>
        <translation>Listet serielle Anschlüsse; öffnet keinen und sendet nichts</translation>
    </message>
    <message>
        <source>Listens a few seconds; connects to nothing</source>
        <translation>Hört einige Sekunden zu; verbindet sich mit nichts</translation>
    </message>
    <message>
        <source>Ask it</source>
        <translation>Ihn fragen</translation>
    </message>
    <message>
        <source>Connects once to the Bluetooth device to learn what it sends</source>
        <translation>Verbindet sich einmal mit dem Bluetooth-Gerät, um zu erfahren, was es sendet</translation>
    </message>
    <message>
        <source>Serial number: %1</source>
        <translation>Seriennummer: %1</translation>
    </message>
    <message>
        <source>Capacity: %1</source>
        <translation>Nennmoment: %1</translation>
    </message>
    <message>
        <source>Accuracy: ± %1 % of reading, 95 %</source>
        <translation>Genauigkeit: ± %1 % vom Messwert, 95 %</translation>
    </message>
    <message>
        <source>%1 (an invented example)</source>
        <translation>%1 (ein erfundenes Beispiel)</translation>
    </message>
    <message>
        <source>/dev/ttyUSB1, COM4, or as found above</source>
        <translation>/dev/ttyUSB1, COM4 oder wie oben gefunden</translation>
    </message>
    <message>
        <source>/dev/ttyUSB0, COM3, or an address</source>
        <translation>/dev/ttyUSB0, COM3 oder eine Adresse</translation>
    </message>
    <message>
        <source>It tells the wheel's angle, at its own times beside the torque's. If it goes away the test goes on.</source>
        <translation>Er liefert den Winkel des Rads, zu eigenen Zeiten neben dem Moment. Fällt er aus, geht die Prüfung weiter.</translation>
    </message>
    <message>
        <source>with angle</source>
        <translation>mit Winkel</translation>
    </message>
    <message>
        <source>Where is it?</source>
        <translation>Wo ist er?</translation>
    </message>
    <message>
        <source>Text, frames and Bluetooth packets are understood. Nothing is sent unless you type a question and agree.</source>
        <translation>Text, Telegramme und Bluetooth-Pakete werden verstanden. Gesendet wird nur, wenn Sie eine Frage eintippen und zustimmen.</translation>
    </message>
    <message>
        <source>Connected by</source>
        <translation>Verbunden über</translation>
    </message>
    <message>
        <source>Serial port</source>
        <translation>Serielle Schnittstelle</translation>
    </message>
    <message>
        <source>A captured file</source>
        <translation>Eine mitgeschnittene Datei</translation>
    </message>
    <message>
        <source>Choose a port</source>
        <translation>Anschluss wählen</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>Find it out</source>
        <translation>Herausfinden</translation>
    </message>
    <message>
        <source>%1 baud</source>
        <translation>%1 Baud</translation>
    </message>
    <message>
        <source>Question, only for one that answers when asked</source>
        <translation>Frage, nur für einen, der auf Fragen antwortet</translation>
    </message>
    <message>
        <source>leave empty: nothing is sent</source>
        <translation>leer lassen: nichts wird gesendet</translation>
    </message>
    <message>
        <source>Listen</source>
        <translation>Zuhören</translation>
    </message>
    <message>
        <source>Read it</source>
        <translation>Lesen</translation>
    </message>
    <message>
        <source>Learn a transducer</source>
        <translation>Aufnehmer kennenlernen</translation>
    </message>
    <message>
        <source>Load and unload it now</source>
        <translation>Jetzt belasten und entlasten</translation>
    </message>
    <message>
        <source>On a wheel: engine off and key away, car on stands, wheels on the floor chocked, brakes released.</source>
        <translation>Am Rad: Motor aus und Schlüssel weg, Fahrzeug auf Böcken, Räder am Boden gegen Wegrollen gesichert, Bremsen gelöst.</translation>
    </message>
    <message>
        <source>1   Leave it unloaded for two seconds.</source>
        <translation>1   Zwei Sekunden unbelastet lassen.</translation>
    </message>
    <message>
        <source>2   Load it clockwise, seen from outside the car, as far as usual. Ease it off.</source>
        <translation>2   Im Uhrzeigersinn, von außen gesehen, so weit wie üblich belasten. Nachlassen.</translation>
    </message>
    <message>
        <source>3   Load it the other way. Ease it off.</source>
        <translation>3   Andersherum belasten. Nachlassen.</translation>
    </message>
    <message>
        <source>Its unit is not sent. %1 readings; %2 % of what came is understood</source>
        <translation>Die Einheit wird nicht gesendet. %1 Messwerte; %2 % des Empfangenen sind verstanden</translation>
    </message>
    <message>
        <source>As it came: %1</source>
        <translation>Wie empfangen: %1</translation>
    </message>
    <message>
        <source>Push the lever and see which number moves with it, then press that number.</source>
        <translation>Den Hebel drücken, sehen, welche Zahl mitgeht, und diese Zahl anklicken.</translation>
    </message>
    <message>
        <source>%1 moves now %2</source>
        <translation>%1 bewegt sich %2</translation>
    </message>
    <message>
        <source>Take this number as the torque</source>
        <translation>Diese Zahl als Drehmoment nehmen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Finished loading</source>
        <translation>Fertig belastet</translation>
    </message>
    <message>
        <source>Is this right? Then name it</source>
        <translation>Stimmt das? Dann benennen</translation>
    </message>
    <message>
        <source>Its torque is</source>
        <translation>Sein Drehmoment ist</translation>
    </message>
    <message>
        <source>number %1, %2: %3 to %4</source>
        <translation>Zahl %1, %2: %3 bis %4</translation>
    </message>
    <message>
        <source>%1 % of what came is understood</source>
        <translation>%1 % des Empfangenen sind verstanden</translation>
    </message>
    <message>
        <source>lines end with CRLF</source>
        <translation>Zeilen enden mit CRLF</translation>
    </message>
    <message>
        <source>number %1 of a line hardly moved (%2 to %3): no torque</source>
        <translation>Zahl %1 einer Zeile bewegte sich kaum (%2 bis %3): kein Drehmoment</translation>
    </message>
    <message>
        <source>a counter that steps by %1 and wraps at %2</source>
        <translation>ein Zähler, der um %1 steigt und bei %2 von vorn beginnt</translation>
    </message>
    <message>
        <source>%1 readings a second: taken as %2</source>
        <translation>%1 Messwerte je Sekunde: als %2 genommen</translation>
    </message>
    <message>
        <source>readings have a sign</source>
        <translation>Messwerte haben ein Vorzeichen</translation>
    </message>
    <message>
        <source>Not clear: %1</source>
        <translation>Nicht klar: %1</translation>
    </message>
    <message>
        <source>the unit is not sent</source>
        <translation>die Einheit wird nicht gesendet</translation>
    </message>
    <message>
        <source>long transducer, bench 2</source>
        <translation>langer Aufnehmer, Werkbank 2</translation>
    </message>
    <message>
        <source>Unit it shows</source>
        <translation>Einheit, die er zeigt</translation>
    </message>
    <message>
        <source>Read it off the device</source>
        <translation>Am Gerät ablesen</translation>
    </message>
    <message>
        <source>Sign, by the first load</source>
        <translation>Vorzeichen, nach der ersten Last</translation>
    </message>
    <message>
        <source>Capacity, in its unit</source>
        <translation>Nennmoment, in seiner Einheit</translation>
    </message>
    <message>
        <source>Accuracy, % of reading (95 %)</source>
        <translation>Genauigkeit, % vom Messwert (95 %)</translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>as on its label</source>
        <translation>wie auf dem Schild</translation>
    </message>
    <message>
        <source>Give it a name, to find it again. Read the unit off the device.</source>
        <translation>Benennen, um ihn wiederzufinden. Die Einheit am Gerät ablesen.</translation>
    </message>
    <message>
        <source>Save and use it</source>
        <translation>Sichern und verwenden</translation>
    </message>
    <message>
        <source>Check it with known weights</source>
        <translation>Mit bekannten Gewichten prüfen</translation>
    </message>
    <message>
        <source>Clamp the transducer's far end so that it cannot turn. Tie the weight to the arm, hang it a hand's width above the floor, and stand clear of it: no toes, knees or hands below.</source>
        <translation>Das andere Ende des Aufnehmers so einspannen, dass es sich nicht drehen kann. Das Gewicht am Arm anbinden, eine Handbreit über dem Boden hängen und Abstand halten: keine Zehen, Knie oder Hände darunter.</translation>
    </message>
    <message>
        <source>Fit the arm level now, with nothing on it: its own weight then does not count.</source>
        <translation>Den Arm jetzt waagerecht anbauen, ohne Last: Sein Eigengewicht zählt dann nicht.</translation>
    </message>
    <message>
        <source>Check %1</source>
        <translation>%1 prüfen</translation>
    </message>
    <message>
        <source>Calibrate %1, a bare amplifier, by two loads</source>
        <translation>%1, einen bloßen Verstärker, mit zwei Lasten kalibrieren</translation>
    </message>
    <message>
        <source>workshop transducer</source>
        <translation>Aufnehmer der Werkstatt</translation>
    </message>
    <message>
        <source>Mass with its hanger</source>
        <translation>Masse mit Gehänge</translation>
    </message>
    <message>
        <source>Second mass, if any</source>
        <translation>Zweite Masse, falls vorhanden</translation>
    </message>
    <message>
        <source>Third mass, if any</source>
        <translation>Dritte Masse, falls vorhanden</translation>
    </message>
    <message>
        <source>%1 kg in all</source>
        <translation>%1 kg insgesamt</translation>
    </message>
    <message>
        <source>Drive to hanging point</source>
        <translation>Vierkant bis Hängepunkt</translation>
    </message>
    <message>
        <source>The length is good to ±</source>
        <translation>Die Länge stimmt auf ±</translation>
    </message>
    <message>
        <source>empty: 0.5 mm</source>
        <translation>leer: 0,5 mm</translation>
    </message>
    <message>
        <source>The masses are good to ±</source>
        <translation>Die Massen stimmen auf ±</translation>
    </message>
    <message>
        <source>5 g; empty: exact</source>
        <translation>5 g; leer: genau</translation>
    </message>
    <message>
        <source>Latitude, for gravity</source>
        <translation>Geografische Breite, für die Fallbeschleunigung</translation>
    </message>
    <message>
        <source>Height above sea level</source>
        <translation>Höhe über dem Meer</translation>
    </message>
    <message>
        <source>Or gravity itself, m/s²</source>
        <translation>Oder die Fallbeschleunigung selbst, m/s²</translation>
    </message>
    <message>
        <source>9.807; empty: standard</source>
        <translation>9.807; leer: Normwert</translation>
    </message>
    <message>
        <source>The weight turns it</source>
        <translation>Das Gewicht dreht ihn</translation>
    </message>
    <message>
        <source>Loads</source>
        <translation>Lasten</translation>
    </message>
    <message>
        <source>Up and down again</source>
        <translation>Auf und wieder ab</translation>
    </message>
    <message>
        <source>Up only</source>
        <translation>Nur auf</translation>
    </message>
    <message>
        <source>Permitted error, if no certificate</source>
        <translation>Zulässige Abweichung, falls kein Kalibrierschein</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Dead-weight check</source>
        <translation>Prüfung mit Gewichten</translation>
    </message>
    <message>
        <source>Hang and take off</source>
        <translation>Auflegen und abnehmen</translation>
    </message>
    <message>
        <source>Stand clear of the weight. No toes below it.</source>
        <translation>Abstand vom Gewicht halten. Keine Zehen darunter.</translation>
    </message>
    <message>
        <source>Hang %1 in all</source>
        <translation>Insgesamt %1 auflegen</translation>
    </message>
    <message>
        <source>Hang %1</source>
        <translation>%1 auflegen</translation>
    </message>
    <message>
        <source>Step %1 of %2. It measures by itself once the reading has moved and is still.</source>
        <translation>Schritt %1 von %2. Es wird von selbst gemessen, sobald die Anzeige sich bewegt hat und ruhig steht.</translation>
    </message>
    <message>
        <source>Step %1 of %2. Still: measuring …</source>
        <translation>Schritt %1 von %2. Ruhig: es wird gemessen …</translation>
    </message>
    <message>
        <source>Step %1 of %2. Press Measure now when it hangs still; a mean is then taken.</source>
        <translation>Schritt %1 von %2. Jetzt messen drücken, wenn es ruhig hängt; dann wird gemittelt.</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Hands off</source>
        <translation>Hände weg</translation>
    </message>
    <message>
        <source>Keep it with serial number %1 in the register: later recordings name it.</source>
        <translation>Mit Seriennummer %1 im Verzeichnis behalten: Spätere Aufzeichnungen nennen sie.</translation>
    </message>
    <message>
        <source>Weigh again</source>
        <translation>Noch einmal</translation>
    </message>
    <message>
        <source>Save this check</source>
        <translation>Diese Prüfung sichern</translation>
    </message>
    <message>
        <source>torque in N·m = reading × %1</source>
        <translation>Drehmoment in N·m = Messwert × %1</translation>
    </message>
    <message>
        <source>scale known to ± %1 % (95 %)</source>
        <translation>Skale bekannt auf ± %1 % (95 %)</translation>
    </message>
    <message>
        <source>Keep it as a description of its own in your list, read only, dated, and used from now on. Then check it.</source>
        <translation>Als eigene Beschreibung in Ihrer Liste behalten, schreibgeschützt, mit Datum und ab jetzt verwendet. Danach prüfen.</translation>
    </message>
    <message>
        <source>It sends nothing unless it is asked</source>
        <translation>Er sendet nur auf Anfrage</translation>
    </message>
    <message>
        <source>A request for Modbus registers (%1) of device %2 every %3 s would be sent to %4.</source>
        <translation>Alle %3 s würde eine Abfrage der Modbus-Register (%1) von Gerät %2 an %4 gesendet.</translation>
    </message>
    <message>
        <source>%1 every %2 s would be sent to %3.</source>
        <translation>Alle %2 s würde %1 an %3 gesendet.</translation>
    </message>
    <message>
        <source>Byte by byte, in hexadecimal digits</source>
        <translation>Byte für Byte, hexadezimal</translation>
    </message>
    <message>
        <source>as text: %1</source>
        <translation>als Text: %1</translation>
    </message>
    <message>
        <source>Nothing else is sent. It begins when the test does and goes on until it ends, also after a cable comes back. Your consent covers only this description as it stands and this port, and is forgotten when the window closes.</source>
        <translation>Sonst wird nichts gesendet. Es beginnt mit der Prüfung und endet mit ihr, auch nachdem ein Kabel zurückgekommen ist. Ihre Zustimmung gilt nur für diese Beschreibung, wie sie ist, und diesen Anschluss, und wird beim Schließen des Fensters vergessen.</translation>
    </message>
    <message>
        <source>Where this description comes from</source>
        <translation>Woher diese Beschreibung kommt</translation>
    </message>
    <message>
        <source>Comes with this program: the invented example %1. It fits your device only by chance.</source>
        <translation>Mit diesem Programm geliefert: das erfundene Beispiel %1. Es passt nur zufällig zu Ihrem Gerät.</translation>
    </message>
    <message>
        <source>In its writer's own words: %1</source>
        <translation>In den Worten des Verfassers: %1</translation>
    </message>
    <message>
        <source>On another device the same bytes may switch, set or erase something. Agree only if this transducer, and nothing else, is at the other end.</source>
        <translation>An einem anderen Gerät können dieselben Bytes etwas schalten, stellen oder löschen. Nur zustimmen, wenn dieser Aufnehmer und nichts anderes am anderen Ende ist.</translation>
    </message>
    <message>
        <source>Send nothing</source>
        <translation>Nichts senden</translation>
    </message>
    <message>
        <source>Yes, send this</source>
        <translation>Ja, das senden</translation>
    </message>
    <message>
        <source>Only if you know this device</source>
        <translation>Nur, wenn Sie dieses Gerät kennen</translation>
    </message>
    <message>
        <source>Ask this transducer?</source>
        <translation>Diesen Aufnehmer abfragen?</translation>
    </message>
    <message>
        <source>Fixture, limit, job: written beside the recording, with a reason</source>
        <translation>Vorrichtung, Grenzwert, Auftrag: neben die Aufzeichnung geschrieben, mit Grund</translation>
    </message>
    <message>
        <source>Limit: %1</source>
        <translation>Grenzwert: %1</translation>
    </message>
    <message>
        <source>In gear: %1</source>
        <translation>Mit Gang: %1</translation>
    </message>
    <message>
        <source>In neutral: %1</source>
        <translation>Im Leerlauf: %1</translation>
    </message>
    <message>
        <source>simulated: must never be filed as a test</source>
        <translation>simuliert: darf nie als Prüfung abgelegt werden</translation>
    </message>
    <message>
        <source>%1, %2, %3 pulls</source>
        <translation>%1, %2, %3 Züge</translation>
    </message>
    <message>
        <source>This answer, or a table of all recordings found</source>
        <translation>Diese Antwort oder eine Tabelle aller gefundenen Aufzeichnungen</translation>
    </message>
    <message>
        <source>%1 against %2: %3 (95 %: %4), lower.</source>
        <translation>%1 gegen %2: %3 (95 %: %4), niedriger.</translation>
    </message>
    <message>
        <source>%1 against %2: %3 (95 %: %4), higher.</source>
        <translation>%1 gegen %2: %3 (95 %: %4), höher.</translation>
    </message>
    <message>
        <source>Copy this table</source>
        <translation>Diese Tabelle kopieren</translation>
    </message>
    <message>
        <source>▼ lower</source>
        <translation>▼ niedriger</translation>
    </message>
    <message>
        <source>▲ higher</source>
        <translation>▲ höher</translation>
    </message>
    <message>
        <source>Dunnett, jointly 95 %</source>
        <translation>Dunnett, gemeinsam 95 %</translation>
    </message>
    <message>
        <source>not shown (90 %: %1 to %2)</source>
        <translation>nicht gezeigt (90 %: %1 bis %2)</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>Group</source>
        <translation>Gruppe</translation>
    </message>
    <message>
        <source>Difference (%1)</source>
        <translation>Differenz (%1)</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>Same within ± %1</source>
        <translation>Gleich innerhalb ± %1</translation>
    </message>
    <message>
        <source>vehicle, shim, 2026-05 …</source>
        <translation>Fahrzeug, Scheibe, 2026-05 …</translation>
    </message>
    <message>
        <source>What is compared</source>
        <translation>Was verglichen wird</translation>
    </message>
    <message>
        <source>Tag that identifies a fill or build</source>
        <translation>Merkmal, das eine Füllung oder einen Zusammenbau bezeichnet</translation>
    </message>
    <message>
        <source>fill</source>
        <translation>Füllung</translation>
    </message>
    <message>
        <source>day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>modifier, %</source>
        <translation>Reibungszusatz, %</translation>
    </message>
    <message>
        <source>oil temperature, °C</source>
        <translation>Öltemperatur, °C</translation>
    </message>
    <message>
        <source>shim, mm</source>
        <translation>Ausgleichsscheibe, mm</translation>
    </message>
    <message>
        <source>modifier %1 %</source>
        <translation>Reibungszusatz %1 %</translation>
    </message>
    <message>
        <source>distance %1 km</source>
        <translation>Strecke %1 km</translation>
    </message>
    <message>
        <source>oil temperature %1 °C</source>
        <translation>Öltemperatur %1 °C</translation>
    </message>
    <message>
        <source>A shim is 0 to %1 thick</source>
        <translation>Eine Scheibe ist 0 bis %1 dick</translation>
    </message>
    <message>
        <source>Must be 0 to %1</source>
        <translation>Muss 0 bis %1 sein</translation>
    </message>
    <message>
        <source>shim, in</source>
        <translation>Ausgleichsscheibe, in</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>Lengths in</source>
        <translation>Längen in</translation>
    </message>
    <message>
        <source>cycles</source>
        <translation>Zyklen</translation>
    </message>
    <message>
        <source>distance, km</source>
        <translation>Strecke, km</translation>
    </message>
    <message>
        <source>event</source>
        <translation>Ereignis</translation>
    </message>
    <message>
        <source>Choose a tag</source>
        <translation>Merkmal wählen</translation>
    </message>
    <message>
        <source>the first (%1)</source>
        <translation>die erste (%1)</translation>
    </message>
    <message>
        <source>the first</source>
        <translation>die erste</translation>
    </message>
    <message>
        <source>Every group with every other</source>
        <translation>Jede Gruppe mit jeder anderen</translation>
    </message>
    <message>
        <source>no blocks</source>
        <translation>keine Blöcke</translation>
    </message>
    <message>
        <source>Breakaway (%1)</source>
        <translation>Losbrechmoment (%1)</translation>
    </message>
    <message>
        <source>Rotating (%1)</source>
        <translation>In Bewegung (%1)</translation>
    </message>
    <message>
        <source>%1 fills, %2 pulls</source>
        <translation>%1 Füllungen, %2 Züge</translation>
    </message>
    <message>
        <source>1 fill, %1 pulls</source>
        <translation>1 Füllung, %1 Züge</translation>
    </message>
    <message>
        <source>This answer (CSV, JSON)</source>
        <translation>Diese Antwort (CSV, JSON)</translation>
    </message>
    <message>
        <source>All recordings found: one row per recording</source>
        <translation>Alle gefundenen Aufzeichnungen: eine Zeile je Aufzeichnung</translation>
    </message>
    <message>
        <source>All recordings found: one row per pull</source>
        <translation>Alle gefundenen Aufzeichnungen: eine Zeile je Zug</translation>
    </message>
    <message>
        <source>For %1: %2 (95 %: %3 to %4).</source>
        <translation>Für %1: %2 (95 %: %3 bis %4).</translation>
    </message>
    <message>
        <source>The interval holds the scatter from fill to fill; what all fills share (transducer, lever, zero) is not in it.</source>
        <translation>Das Intervall enthält die Streuung von Füllung zu Füllung; was alle gemeinsam haben (Aufnehmer, Hebel, Null), ist nicht darin.</translation>
    </message>
    <message>
        <source>At %1: expect %2 (the next single fill, 95 %: %3 to %4).</source>
        <translation>Bei %1: zu erwarten sind %2 (die nächste einzelne Füllung, 95 %: %3 bis %4).</translation>
    </message>
    <message>
        <source>Per %1 of %2: %3 (95 %: %4 to %5), no trend is shown.</source>
        <translation>Je %1 %2: %3 (95 %: %4 bis %5), kein Trend ist gezeigt.</translation>
    </message>
    <message>
        <source>Per %1 of %2: %3 (95 %: %4 to %5), a trend is shown.</source>
        <translation>Je %1 %2: %3 (95 %: %4 bis %5), ein Trend ist gezeigt.</translation>
    </message>
    <message>
        <source>Change per %1 of %2</source>
        <translation>Änderung je %1 %2</translation>
    </message>
    <message>
        <source>%1, %2 fills, least squares</source>
        <translation>%1, %2 Füllungen, kleinste Quadrate</translation>
    </message>
    <message>
        <source>Scatter about the line</source>
        <translation>Streuung um die Gerade</translation>
    </message>
    <message>
        <source>one further fill</source>
        <translation>eine weitere Füllung</translation>
    </message>
    <message>
        <source>At %1, the line</source>
        <translation>Bei %1, die Gerade</translation>
    </message>
    <message>
        <source>the mean there</source>
        <translation>das Mittel dort</translation>
    </message>
    <message>
        <source>At %1, next fill</source>
        <translation>Bei %1, nächste Füllung</translation>
    </message>
    <message>
        <source>a single one</source>
        <translation>eine einzelne</translation>
    </message>
    <message>
        <source>different operators: %1</source>
        <translation>verschiedene Prüfer: %1</translation>
    </message>
    <message>
        <source>different axles within %1</source>
        <translation>verschiedene Achsen innerhalb %1</translation>
    </message>
    <message>
        <source>it has no tag '%1'</source>
        <translation>sie hat kein Merkmal '%1'</translation>
    </message>
    <message>
        <source>%1, pull at %2 s</source>
        <translation>%1, Zug bei %2 s</translation>
    </message>
    <message>
        <source>These groups cannot be compared: %1</source>
        <translation>Diese Gruppen sind nicht vergleichbar: %1</translation>
    </message>
    <message>
        <source>Compare like with like: narrow the search until only such tests are left. If you know why these may stand side by side all the same, say so; the reason is kept with the answer.</source>
        <translation>Gleiches mit Gleichem vergleichen: die Suche einengen, bis nur solche Prüfungen bleiben. Wenn Sie wissen, warum diese trotzdem nebeneinander stehen dürfen, sagen Sie es; der Grund bleibt bei der Antwort.</translation>
    </message>
    <message>
        <source>Settled since cycle %1.</source>
        <translation>Eingelaufen seit Zyklus %1.</translation>
    </message>
    <message>
        <source>%1 per ten cycles (99.7 %: %2 to %3); settled means wholly within ±1 %.</source>
        <translation>%1 je zehn Zyklen (99,7 %: %2 bis %3); eingelaufen heißt ganz innerhalb ±1 %.</translation>
    </message>
    <message>
        <source>  too few yet</source>
        <translation>  noch zu wenige</translation>
    </message>
    <message>
        <source>  cannot be shown yet</source>
        <translation>  noch nicht zu zeigen</translation>
    </message>
    <message>
        <source>  still moving</source>
        <translation>  noch in Bewegung</translation>
    </message>
    <message>
        <source>● settled</source>
        <translation>● eingelaufen</translation>
    </message>
    <message>
        <source>after %1</source>
        <translation>nach %1</translation>
    </message>
    <message>
        <source>% per ten</source>
        <translation>% je zehn</translation>
    </message>
    <message>
        <source>99.7 % interval</source>
        <translation>99,7-%-Intervall</translation>
    </message>
    <message>
        <source>Judged then</source>
        <translation>Damals beurteilt</translation>
    </message>
    <message>
        <source>vehicle, axle, side</source>
        <translation>Fahrzeug, Achse, Seite</translation>
    </message>
    <message>
        <source>settled since %1</source>
        <translation>eingelaufen seit %1</translation>
    </message>
    <message>
        <source>judged: last %1</source>
        <translation>beurteilt: letzte %1</translation>
    </message>
    <message>
        <source>The first %1 jobs fall by %2 % themselves: no reference level; %3</source>
        <translation>Die ersten %1 Aufträge fallen selbst um %2 %: kein Bezugsniveau; %3</translation>
    </message>
    <message>
        <source>reference level %1, scatter %2, from the first %3 jobs.</source>
        <translation>Bezugsniveau %1, Streuung %2, aus den ersten %3 Aufträgen.</translation>
    </message>
    <message>
        <source>in band, reference level</source>
        <translation>im Band, Bezugsniveau</translation>
    </message>
    <message>
        <source>in band</source>
        <translation>im Band</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>Band</source>
        <translation>Band</translation>
    </message>
    <message>
        <source>band, lower edge</source>
        <translation>Band, untere Kante</translation>
    </message>
    <message>
        <source>band, upper edge</source>
        <translation>Band, obere Kante</translation>
    </message>
    <message>
        <source>weighted average</source>
        <translation>gewichtetes Mittel</translation>
    </message>
    <message>
        <source>reference level</source>
        <translation>Bezugsniveau</translation>
    </message>
    <message>
        <source>%1 fills of each group, %2 in all.</source>
        <translation>%1 Füllungen je Gruppe, %2 insgesamt.</translation>
    </message>
    <message>
        <source>At a scatter of %1 from fill to fill a difference of %2 would be detected, compared within blocks, with %3 % probability.</source>
        <translation>Bei einer Streuung von %1 zwischen Füllungen würde ein Unterschied von %2, in Blöcken verglichen, mit %3 % Wahrscheinlichkeit erkannt.</translation>
    </message>
    <message>
        <source>these recordings, by %1</source>
        <translation>diese Aufzeichnungen, nach %1</translation>
    </message>
    <message>
        <source>Power (%)</source>
        <translation>Trennschärfe (%)</translation>
    </message>
    <message>
        <source>%1 fills</source>
        <translation>%1 Füllungen</translation>
    </message>
    <message>
        <source>Fills per group</source>
        <translation>Füllungen je Gruppe</translation>
    </message>
    <message>
        <source>One reading is good to %1 (95 %), whoever takes it; repeats scatter more than operators differ.</source>
        <translation>Eine Ablesung stimmt auf %1 (95 %), wer immer sie macht; Wiederholungen streuen mehr, als Prüfer sich unterscheiden.</translation>
    </message>
    <message>
        <source>Two readings of one axle by one operator differ by more than %1 only once in twenty.</source>
        <translation>Zwei Ablesungen einer Achse durch einen Prüfer unterscheiden sich nur einmal in zwanzig um mehr als %1.</translation>
    </message>
    <message>
        <source>Same operator, repeated</source>
        <translation>Derselbe Prüfer, wiederholt</translation>
    </message>
    <message>
        <source>Operator to operator</source>
        <translation>Von Prüfer zu Prüfer</translation>
    </message>
    <message>
        <source>reproducibility</source>
        <translation>Vergleichpräzision</translation>
    </message>
    <message>
        <source>Measurement, total</source>
        <translation>Messung, gesamt</translation>
    </message>
    <message>
        <source>%1 % of the whole spread</source>
        <translation>%1 % der ganzen Streuung</translation>
    </message>
    <message>
        <source>Axle to axle</source>
        <translation>Von Achse zu Achse</translation>
    </message>
    <message>
        <source>distinct levels it can tell apart: %1</source>
        <translation>unterscheidbare Stufen: %1</translation>
    </message>
    <message>
        <source>Overall</source>
        <translation>Insgesamt</translation>
    </message>
    <message>
        <source>mean %1</source>
        <translation>Mittel %1</translation>
    </message>
    <message>
        <source>Off the axle's mean (%1)</source>
        <translation>Abweichung vom Mittel der Achse (%1)</translation>
    </message>
    <message>
        <source>%1 reads %2 lower than %3 (95 %: %4), %5 axles.</source>
        <translation>%1 liest %2 niedriger als %3 (95 %: %4), %5 Achsen.</translation>
    </message>
    <message>
        <source>%1 reads %2 higher than %3 (95 %: %4), %5 axles.</source>
        <translation>%1 liest %2 höher als %3 (95 %: %4), %5 Achsen.</translation>
    </message>
    <message>
        <source>In 95 % of axles a single difference lies between %1 and %2.</source>
        <translation>Bei 95 % der Achsen liegt eine einzelne Differenz zwischen %1 und %2.</translation>
    </message>
    <message>
        <source>Mean difference</source>
        <translation>Mittlere Differenz</translation>
    </message>
    <message>
        <source>95 % interval of the mean</source>
        <translation>95-%-Intervall des Mittels</translation>
    </message>
    <message>
        <source>Single differences</source>
        <translation>Einzelne Differenzen</translation>
    </message>
    <message>
        <source>limits of agreement, 95 % of axles</source>
        <translation>Übereinstimmungsgrenzen, 95 % der Achsen</translation>
    </message>
    <message>
        <source>Mean of both, %1</source>
        <translation>Mittel beider, %1</translation>
    </message>
    <message>
        <source>%1 of %2 recordings read</source>
        <translation>%1 von %2 Aufzeichnungen gelesen</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>What is read is kept</source>
        <translation>Gelesenes bleibt erhalten</translation>
    </message>
    <message>
        <source>Choose the tag that makes the groups.</source>
        <translation>Das Merkmal wählen, das die Gruppen bildet.</translation>
    </message>
    <message>
        <source>Compare groups: before and after a rebuild, left and right, one oil against another.</source>
        <translation>Gruppen vergleichen: vor und nach einer Überholung, links und rechts, ein Öl gegen ein anderes.</translation>
    </message>
    <message>
        <source>1. Give the recordings a tag in Review, such as  oil=B, fill=2, or use what the job card states: side, vehicle.</source>
        <translation>1. Den Aufzeichnungen unter Ansehen ein Merkmal geben, etwa  oil=B, fill=2, oder nehmen, was die Karte sagt: Seite, Fahrzeug.</translation>
    </message>
    <message>
        <source>2. Choose on the left which recordings, what is compared, and which tag makes the groups.</source>
        <translation>2. Links wählen, welche Aufzeichnungen, was verglichen wird und welches Merkmal die Gruppen bildet.</translation>
    </message>
    <message>
        <source>A fill (drain, flush, fill, run in) is one point, however many pulls it has: pulls of one fill belong together.</source>
        <translation>Eine Füllung (ablassen, spülen, füllen, einfahren) ist ein Punkt, wie viele Züge sie auch hat: Züge einer Füllung gehören zusammen.</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Stopping after the recordings that are being read …</source>
        <translation>Hält an nach den Aufzeichnungen, die gerade gelesen werden …</translation>
    </message>
    <message>
        <source>The photograph that was removed last</source>
        <translation>Das zuletzt entfernte Foto</translation>
    </message>
    <message>
        <source>Time is in</source>
        <translation>Zeit in</translation>
    </message>
    <message>
        <source>Readings a second</source>
        <translation>Messwerte je Sekunde</translation>
    </message>
    <message>
        <source>500 Hz</source>
        <translation>500 Hz</translation>
    </message>
    <message>
        <source>Torque or force</source>
        <translation>Drehmoment oder Kraft</translation>
    </message>
    <message>
        <source>It is in</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>One count is</source>
        <translation>Ein Zählschritt ist</translation>
    </message>
    <message>
        <source>Angle of the wheel</source>
        <translation>Winkel des Rads</translation>
    </message>
    <message>
        <source>Sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>of a workbook</source>
        <translation>einer Arbeitsmappe</translation>
    </message>
    <message>
        <source>Radius, axle to hook</source>
        <translation>Radius, Achse bis Haken</translation>
    </message>
    <message>
        <source>Looking at what came …</source>
        <translation>Das Empfangene wird angesehen …</translation>
    </message>
    <message>
        <source>Choose the file first.</source>
        <translation>Erst die Datei wählen.</translation>
    </message>
    <message>
        <source>The comma</source>
        <translation>Das Komma</translation>
    </message>
    <message>
        <source>Thousands</source>
        <translation>Tausender</translation>
    </message>
    <message>
        <source>Reading = number sent ×</source>
        <translation>Messwert = gesendete Zahl ×</translation>
    </message>
    <message>
        <source>Lines of the torque begin with</source>
        <translation>Zeilen des Drehmoments beginnen mit</translation>
    </message>
    <message>
        <source>as shown above</source>
        <translation>wie oben gezeigt</translation>
    </message>
    <message>
        <source>Layout of a line</source>
        <translation>Aufbau einer Zeile</translation>
    </message>
    <message>
        <source>{torque:8}{temperature:6}</source>
        <translation>{torque:8}{temperature:6}</translation>
    </message>
    <message>
        <source>Choose the file</source>
        <translation>Datei wählen</translation>
    </message>
    <message>
        <source>Bytes as they came, captured by a terminal program</source>
        <translation>Bytes wie empfangen, von einem Terminalprogramm mitgeschnitten</translation>
    </message>
    <message>
        <source>Nothing came yet.</source>
        <translation>Noch nichts empfangen.</translation>
    </message>
    <message>
        <source>Measure it again</source>
        <translation>Noch einmal messen</translation>
    </message>
    <message>
        <source>Takes the last step back</source>
        <translation>Nimmt den letzten Schritt zurück</translation>
    </message>
    <message>
        <source>SIMULATED: practice, never kept as a check</source>
        <translation>SIMULIERT: Übung, nie als Prüfung aufbewahrt</translation>
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
        <translation>zugeklappt</translation>
    </message>
    <message>
        <source>Copied</source>
        <translation>Kopiert</translation>
    </message>
    <message>
        <source>Limit, breakaway</source>
        <translation>Grenzwert, Losbrechmoment</translation>
    </message>
    <message>
        <source>Chart over time</source>
        <translation>Verlauf über die Zeit</translation>
    </message>
    <message>
        <source>Opens Compare</source>
        <translation>Öffnet den Vergleich</translation>
    </message>
    <message>
        <source>Pull %1, %2: amplitude %3 at the axle, highest %4 after its start. A hint only; it may be: %5</source>
        <translation>Zug %1, %2: Amplitude %3 an der Achse, am höchsten %4 nach seinem Beginn. Nur ein Hinweis; es kann sein: %5</translation>
    </message>
    <message>
        <source>Pull %1, %2: amplitude %3 at the sensor, highest %4 after its start. A hint only; it may be: %5</source>
        <translation>Zug %1, %2: Amplitude %3 am Aufnehmer, am höchsten %4 nach seinem Beginn. Nur ein Hinweis; es kann sein: %5</translation>
    </message>
    <message>
        <source>Pull %1, %2, the lever's stated weight taken off: amplitude %3, highest %4 after its start</source>
        <translation>Zug %1, %2, das angegebene Gewicht des Hebels abgezogen: Amplitude %3, am höchsten %4 nach seinem Beginn</translation>
    </message>
    <message>
        <source>every second turn of the wheel below %1</source>
        <translation>bei jeder zweiten Umdrehung des Rades unter %1</translation>
    </message>
    <message>
        <source>every second turn of the wheel takes %1</source>
        <translation>bei jeder zweiten Umdrehung des Rades braucht %1</translation>
    </message>
    <message>
        <source>once per turn of the wheel below %1</source>
        <translation>einmal je Umdrehung des Rades unter %1</translation>
    </message>
    <message>
        <source>once per turn of the wheel takes %1</source>
        <translation>einmal je Umdrehung des Rades braucht %1</translation>
    </message>
    <message>
        <source>twice per turn of the wheel below %1</source>
        <translation>zweimal je Umdrehung des Rades unter %1</translation>
    </message>
    <message>
        <source>twice per turn of the wheel takes %1</source>
        <translation>zweimal je Umdrehung des Rades braucht %1</translation>
    </message>
    <message>
        <source>once per turn of the pinion below %1</source>
        <translation>einmal je Umdrehung des Ritzels unter %1</translation>
    </message>
    <message>
        <source>once per turn of the pinion takes %1</source>
        <translation>einmal je Umdrehung des Ritzels braucht %1</translation>
    </message>
    <message>
        <source>twice per turn of the pinion below %1</source>
        <translation>zweimal je Umdrehung des Ritzels unter %1</translation>
    </message>
    <message>
        <source>twice per turn of the pinion takes %1</source>
        <translation>zweimal je Umdrehung des Ritzels braucht %1</translation>
    </message>
    <message>
        <source>%1, or the pinion's turn, which takes %2 turns to tell from it</source>
        <translation>%1 oder die Umdrehung des Ritzels, die erst in %2 Umdrehungen davon zu unterscheiden ist</translation>
    </message>
    <message>
        <source>every second turn of the wheel repeats like another</source>
        <translation>bei jeder zweiten Umdrehung des Rades wiederholt sich wie ein anderes</translation>
    </message>
    <message>
        <source>once per turn of the wheel repeats like another</source>
        <translation>einmal je Umdrehung des Rades wiederholt sich wie ein anderes</translation>
    </message>
    <message>
        <source>twice per turn of the wheel repeats like another</source>
        <translation>zweimal je Umdrehung des Rades wiederholt sich wie ein anderes</translation>
    </message>
    <message>
        <source>once per turn of the pinion repeats like another</source>
        <translation>einmal je Umdrehung des Ritzels wiederholt sich wie ein anderes</translation>
    </message>
    <message>
        <source>twice per turn of the pinion repeats like another</source>
        <translation>zweimal je Umdrehung des Ritzels wiederholt sich wie ein anderes</translation>
    </message>
    <message>
        <source>%1, or the pinion's turn, which is just as long</source>
        <translation>%1 oder die Umdrehung des Ritzels, die ebenso lang ist</translation>
    </message>
    <message>
        <source>What repeats per turn cannot be told: the longest pull has %1 steady turns, %2 would do</source>
        <translation>Was sich je Umdrehung wiederholt, ist nicht zu erkennen: Der längste Zug hat %1 gleichmäßige Umdrehungen, %2 würden reichen</translation>
    </message>
    <message>
        <source>What repeats per turn of the wheel stands under Details.</source>
        <translation>Was sich je Radumdrehung wiederholt, steht unter Angaben.</translation>
    </message>
    <message>
        <source>What such a unit is tried for instead, after the maker's manual:</source>
        <translation>Worauf eine solche Einheit stattdessen geprüft wird, nach dem Handbuch des Herstellers:</translation>
    </message>
    <message>
        <source>number %1: %2 to %3</source>
        <translation>Zahl %1: %2 bis %3</translation>
    </message>
    <message>
        <source>number %1</source>
        <translation>Zahl %1</translation>
    </message>
    <message>
        <source>stood still, and is kept as a number of its own: %1</source>
        <translation>stand still und bleibt eine eigene Zahl: %1</translation>
    </message>
    <message>
        <source>Frequency band</source>
        <translation>Frequenzband</translation>
    </message>
    <message>
        <source>50-800 Hz</source>
        <translation>50-800 Hz</translation>
    </message>
    <message>
        <source>Axle tag, for its chatter index</source>
        <translation>Achsschild, für die Ratterzahl</translation>
    </message>
    <message>
        <source>Open a recording</source>
        <translation>Aufzeichnung öffnen</translation>
    </message>
    <message>
        <source>WAV, or a table with an acceleration</source>
        <translation>WAV oder eine Tabelle mit einer Beschleunigung</translation>
    </message>
    <message>
        <source>Compare with …</source>
        <translation>Vergleichen mit …</translation>
    </message>
    <message>
        <source>The drive before, same microphone and place</source>
        <translation>Die Fahrt vorher, gleiches Mikrofon, gleicher Platz</translation>
    </message>
    <message>
        <source>Chatter on the road</source>
        <translation>Rattern beim Fahren</translation>
    </message>
    <message>
        <source>Chatter on the road …</source>
        <translation>Rattern beim Fahren …</translation>
    </message>
    <message>
        <source>Before driving</source>
        <translation>Vor dem Fahren</translation>
    </message>
    <message>
        <source>Sound or acceleration</source>
        <translation>Ton oder Beschleunigung</translation>
    </message>
    <message>
        <source>Level against time</source>
        <translation>Pegel über der Zeit</translation>
    </message>
    <message>
        <source>Level, %1</source>
        <translation>Pegel, %1</translation>
    </message>
    <message>
        <source>Events that stand out: %1</source>
        <translation>Ereignisse, die herausragen: %1</translation>
    </message>
    <message>
        <source>an event begins</source>
        <translation>ein Ereignis beginnt</translation>
    </message>
    <message>
        <source>Tyres alike?</source>
        <translation>Reifen gleich?</translation>
    </message>
    <message>
        <source>Compare the tyres</source>
        <translation>Reifen vergleichen</translation>
    </message>
    <message>
        <source>Circumference, left</source>
        <translation>Umfang, links</translation>
    </message>
    <message>
        <source>Circumference, right</source>
        <translation>Umfang, rechts</translation>
    </message>
    <message>
        <source>Standard uncertainty of each</source>
        <translation>Standardunsicherheit von jedem</translation>
    </message>
    <message>
        <source>Road speed, km/h</source>
        <translation>Fahrgeschwindigkeit, km/h</translation>
    </message>
    <message>
        <source>1985 mm</source>
        <translation>1985 mm</translation>
    </message>
    <message>
        <source>Inertia from a spin-down</source>
        <translation>Trägheit aus einem Auslauf</translation>
    </message>
    <message>
        <source>Inertia from a spin-down …</source>
        <translation>Trägheit aus einem Auslauf …</translation>
    </message>
    <message>
        <source>Drag of the same parts</source>
        <translation>Schleppmoment derselben Teile</translation>
    </message>
    <message>
        <source>Its standard uncertainty; without: 5 %</source>
        <translation>Seine Standardunsicherheit; ohne: 5 %</translation>
    </message>
    <message>
        <source>Torque that will be measured</source>
        <translation>Moment, das gemessen wird</translation>
    </message>
    <message>
        <source>In which unit? Write %1 or %2</source>
        <translation>In welcher Einheit? %1 oder %2 schreiben</translation>
    </message>
    <message>
        <source>No value at the axle</source>
        <translation>Kein Wert an der Achse</translation>
    </message>
    <message>
        <source>Engineer's page with a second test …</source>
        <translation>Ingenieurseite mit zweiter Prüfung …</translation>
    </message>
    <message>
        <source>Choose the signed second test</source>
        <translation>Die unterschriebene zweite Prüfung wählen</translation>
    </message>
    <message>
        <source>Choose one recording: the test that is confirmed.</source>
        <translation>Eine Aufzeichnung wählen: die Prüfung, die bestätigt wird.</translation>
    </message>
</context>
</TS>
