<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Heldwheel</name>
    <message>
        <source>Test</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>SIMULATED</source>
        <translation>SIMULIERT</translation>
    </message>
    <message>
        <source>Take the zero</source>
        <translation>Null nehmen</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>Keep turning</source>
        <translation>Weiterdrehen</translation>
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
        <source>force at radius</source>
        <translation>Kraft am Radius</translation>
    </message>
    <message>
        <source>dead weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Null</translation>
    </message>
    <message>
        <source>Pulls</source>
        <translation>Züge</translation>
    </message>
    <message>
        <source>rotating mean</source>
        <translation>Drehmoment in Bewegung, Mittel</translation>
    </message>
    <message>
        <source>rotating maximum</source>
        <translation>Drehmoment in Bewegung, Größtwert</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>andere Seite</translation>
    </message>
    <message>
        <source>held side</source>
        <translation>gehaltene Seite</translation>
    </message>
    <message>
        <source>both ways</source>
        <translation>beide Richtungen</translation>
    </message>
    <message>
        <source>in gear</source>
        <translation>im Gang</translation>
    </message>
    <message>
        <source>Brakes</source>
        <translation>Bremsen</translation>
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
        <translation>Bauart prüfen: Zahnrad-, Visko-, Sperr- und offene Differentiale werden nach diesem Drehmoment nicht beurteilt.</translation>
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
        <translation>Vorher und nachher nur bei gleicher Temperatur, Tempo, Ruhe, Seite, Vorrichtung und gleichem Öl vergleichen.</translation>
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
        <source>Fixture</source>
        <translation>Vorrichtung</translation>
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
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Mistakes and their sizes</source>
        <translation>Fehler und was sie ausmachen</translation>
    </message>
    <message>
        <source>neutral</source>
        <translation>Leerlauf</translation>
    </message>
    <message>
        <source>%1 at the axle, %2</source>
        <translation>%1 an der Achse, %2</translation>
    </message>
    <message>
        <source>median of %1 readings</source>
        <translation>Median von %1 Ablesungen</translation>
    </message>
    <message>
        <source>How to make a held-wheel torque test</source>
        <translation>Prüfung des Drehmoments bei gehaltenem Rad</translation>
    </message>
    <message>
        <source>Hold one wheel of the axle, turn the other with a lever. The pack of a clutch-type limited-slip differential then slips: B is the torque that breaks it away, R the torque that keeps it rotating. %1 The maker's manual comes first.</source>
        <translation>Ein Rad der Achse halten, das andere mit einem Hebel drehen. Das Paket eines Lamellen-Sperrdifferentials rutscht dann: B ist das Moment, bei dem es losbricht, R das Moment, mit dem es sich weiterdreht. %1 Das Handbuch des Herstellers geht vor.</translation>
    </message>
    <message>
        <source>Hold one wheel</source>
        <translation>Ein Rad halten</translation>
    </message>
    <message>
        <source>On the floor or strapped, never by hand. Raise the other. Neutral, brakes free; turn it by hand.</source>
        <translation>Auf dem Boden oder mit Gurt, nie von Hand. Das andere anheben. Leerlauf, Bremsen frei; von Hand drehen.</translation>
    </message>
    <message>
        <source>Fit the lever</source>
        <translation>Hebel ansetzen</translation>
    </message>
    <message>
        <source>On a stud, pointing outward in line with the wheel's centre. Measure to the middle of your hand.</source>
        <translation>Auf einen Bolzen, nach außen und in einer Linie mit der Radmitte. Bis zur Mitte der Hand messen.</translation>
    </message>
    <message>
        <source>Transducer warm, lever hanging free or off, hands off. Take it once more after the last pull.</source>
        <translation>Aufnehmer warm, Hebel frei hängend oder ab, Hände weg. Nach dem letzten Zug noch einmal nehmen.</translation>
    </message>
    <message>
        <source>Two to three seconds until it slips. No jerk. Stop if the torque climbs and nothing moves.</source>
        <translation>Zwei bis drei Sekunden, bis es rutscht. Kein Ruck. Aufhören, wenn das Moment steigt und sich nichts bewegt.</translation>
    </message>
    <message>
        <source>Slowly, 2 to 10 turns a minute, two turns. Ease the load off, keep hold. Rest, and again: five pulls.</source>
        <translation>Langsam, 2 bis 10 je Minute, zwei Umdrehungen. Last wegnehmen, festhalten. Ruhen, und wieder: fünf Züge.</translation>
    </message>
    <message>
        <source>mistake</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>what it does</source>
        <translation>was er ausmacht</translation>
    </message>
    <message>
        <source>from</source>
        <translation>woher</translation>
    </message>
    <message>
        <source>Always</source>
        <translation>Immer</translation>
    </message>
    <message>
        <source>geometry of the lever, 1 + r/L</source>
        <translation>Hebelgeometrie, 1 + r/L</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>üblich, ohne Quelle</translation>
    </message>
    <message>
        <source>inertia × acceleration</source>
        <translation>Trägheit × Beschleunigung</translation>
    </message>
    <message>
        <source>weight × distance</source>
        <translation>Gewicht × Abstand</translation>
    </message>
    <message>
        <source>ramp × delay</source>
        <translation>Anstieg × Verzögerung</translation>
    </message>
    <message>
        <source>packs add up, no mean</source>
        <translation>Summe der Pakete, kein Mittel</translation>
    </message>
    <message>
        <source>NIST SP 811, appendix B.8</source>
        <translation>NIST SP 811, Anhang B.8</translation>
    </message>
    <message>
        <source>steel shafts, 38 to 28 mm</source>
        <translation>Stahlwellen, 38 bis 28 mm</translation>
    </message>
    <message>
        <source>Lever on a stud, read as it is</source>
        <translation>Hebel am Bolzen, direkt abgelesen</translation>
    </message>
    <message>
        <source>11 % low (5 × 114.3 mm, lever 450 mm; 16 % at 300 mm)</source>
        <translation>11 % zu wenig (5 × 114,3 mm, L 450 mm; 16 % bei 300 mm)</translation>
    </message>
    <message>
        <source>Lever on a stud pointing inward</source>
        <translation>Hebel am Bolzen, nach innen</translation>
    </message>
    <message>
        <source>15 % high (5 × 114.3 mm, lever 450 mm)</source>
        <translation>15 % zu viel (5 × 114,3 mm, Hebel 450 mm)</translation>
    </message>
    <message>
        <source>Hand 20 mm from where L was measured</source>
        <translation>Hand 20 mm neben dem Ende von L</translation>
    </message>
    <message>
        <source>0.5 % at 450 mm</source>
        <translation>0,5 % bei 450 mm</translation>
    </message>
    <message>
        <source>Jerked, or still speeding up</source>
        <translation>Geruckt, oder noch im Beschleunigen</translation>
    </message>
    <message>
        <source>20 to 34 N·m high (1.0 to 1.7 kg·m² at 20 rad/s²)</source>
        <translation>20 bis 34 N·m zu viel (1,0 bis 1,7 kg·m² bei 20 rad/s²)</translation>
    </message>
    <message>
        <source>Zero taken with the lever held level</source>
        <translation>Null bei waagerechtem Hebel</translation>
    </message>
    <message>
        <source>up to 6.1 N·m off (2.5 kg at 0.25 m)</source>
        <translation>bis 6,1 N·m daneben (2,5 kg bei 0,25 m)</translation>
    </message>
    <message>
        <source>Slow display, ten readings a second</source>
        <translation>Träge Anzeige, zehn Messwerte je Sekunde</translation>
    </message>
    <message>
        <source>15 N·m low (50 N·m a second, 0.3 s late)</source>
        <translation>15 N·m zu wenig (50 N·m je Sekunde, 0,3 s zu spät)</translation>
    </message>
    <message>
        <source>A brake drags</source>
        <translation>Eine Bremse schleift</translation>
    </message>
    <message>
        <source>4 to 10 N·m high, or it will not turn at all</source>
        <translation>4 bis 10 N·m zu viel, oder es dreht sich gar nicht</translation>
    </message>
    <message>
        <source>A gear is engaged, or the case is held</source>
        <translation>Gang eingelegt, oder Gehäuse gehalten</translation>
    </message>
    <message>
        <source>about twice the torque</source>
        <translation>etwa das doppelte Moment</translation>
    </message>
    <message>
        <source>lbf·ft, lbf·in, N·m, kgf·m mixed up</source>
        <translation>lbf·ft, lbf·in, N·m, kgf·m verwechselt</translation>
    </message>
    <message>
        <source>Large transducer for a small torque</source>
        <translation>Großer Aufnehmer für ein kleines Moment</translation>
    </message>
    <message>
        <source>27 N·m is 8 % of a range of 339 N·m: wide interval</source>
        <translation>27 N·m sind 8 % von 339 N·m: weites Intervall</translation>
    </message>
    <message>
        <source>One pull only</source>
        <translation>Nur ein Zug</translation>
    </message>
    <message>
        <source>a single peak scatters by several to tens of per cent</source>
        <translation>eine Spitze allein streut um einige bis zehn und mehr %</translation>
    </message>
    <message>
        <source>Drag taken for the pack</source>
        <translation>Schleppmoment für das Paket gehalten</translation>
    </message>
    <message>
        <source>16 to 21 N·m without any pack friction</source>
        <translation>16 bis 21 N·m ganz ohne Reibung im Paket</translation>
    </message>
    <message>
        <source>Wind-up of the shafts taken for slip</source>
        <translation>Verdrehte Wellen für Rutschen gehalten</translation>
    </message>
    <message>
        <source>0.6 to 1.8° at 100 N·m before anything slips</source>
        <translation>0,6 bis 1,8° bei 100 N·m, bevor etwas rutscht</translation>
    </message>
    <message>
        <source>held: floor, strap</source>
        <translation>Boden, Gurt</translation>
    </message>
    <message>
        <source>raised</source>
        <translation>angehoben</translation>
    </message>
    <message>
        <source>stand</source>
        <translation>Bock</translation>
    </message>
    <message>
        <source>not by hand</source>
        <translation>nie von Hand</translation>
    </message>
    <message>
        <source>lever</source>
        <translation>Hebel</translation>
    </message>
    <message>
        <source>pull square</source>
        <translation>rechtwinklig</translation>
    </message>
    <message>
        <source>hangs free</source>
        <translation>hängt frei</translation>
    </message>
    <message>
        <source>hands off; again at the end</source>
        <translation>Hände weg; am Ende wieder</translation>
    </message>
    <message>
        <source>2 to 3 s</source>
        <translation>2 bis 3 s</translation>
    </message>
    <message>
        <source>time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>foreign</source>
        <translation>von anderswo</translation>
    </message>
    <message>
        <source>the true zero was not taken again after the pulls: what it may have moved by is not in the interval</source>
        <translation>die wahre Null wurde nach den Zügen nicht noch einmal genommen: was sie sich verschoben haben kann, ist nicht im Intervall</translation>
    </message>
    <message>
        <source>median of %1 pulls, %2 s/√n</source>
        <translation>Median von %1 Zügen, %2 s/√n</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innerhalb</translation>
    </message>
    <message>
        <source>axle tag</source>
        <translation>Achsschild</translation>
    </message>
    <message>
        <source>settled</source>
        <translation>eingelaufen</translation>
    </message>
    <message>
        <source>clipped</source>
        <translation>gekappt</translation>
    </message>
    <message>
        <source>lost samples</source>
        <translation>verlorene Messwerte</translation>
    </message>
    <message>
        <source>cut at start</source>
        <translation>am Anfang abgeschnitten</translation>
    </message>
    <message>
        <source>cut at end</source>
        <translation>am Ende abgeschnitten</translation>
    </message>
    <message>
        <source>ramp too fast</source>
        <translation>zu schnell belastet</translation>
    </message>
    <message>
        <source>zero moved</source>
        <translation>Null verschoben</translation>
    </message>
    <message>
        <source>not resolved</source>
        <translation>nicht aufgelöst</translation>
    </message>
    <message>
        <source>the recording begins in the middle of this pull: start it before touching the lever</source>
        <translation>die Aufzeichnung beginnt mitten in diesem Zug: erst starten, dann den Hebel anfassen</translation>
    </message>
    <message>
        <source>the recording ends under load: ease the load off first, and stop the recording a second later</source>
        <translation>die Aufzeichnung endet unter Last: erst die Last wegnehmen, eine Sekunde danach anhalten</translation>
    </message>
    <message>
        <source>gripped again on the way: this is the pull stated before, as a whole; it counts once</source>
        <translation>unterwegs nachgefasst: das ist der Zug von vorhin, als Ganzes; er zählt einmal</translation>
    </message>
    <message>
        <source>gripped again a moment after the pull before, and one of the two shows no steady turning: not counted; rest two seconds before you pull again</source>
        <translation>gleich nach dem vorigen Zug nachgefasst, und einer der beiden zeigt kein stetiges Drehen: nicht gezählt; zwei Sekunden ruhen, dann wieder ziehen</translation>
    </message>
    <message>
        <source>eased off before anything showed that the pack slipped: pull again, slowly, until the wheel turns and keeps turning</source>
        <translation>nachgelassen, bevor zu sehen war, dass das Paket rutscht: noch einmal langsam ziehen, bis das Rad dreht und weiterdreht</translation>
    </message>
    <message>
        <source>the torque was held but the wheel did not turn: pull on until it turns and keeps turning</source>
        <translation>das Moment wurde gehalten, aber das Rad drehte nicht: weiterziehen, bis es dreht und weiterdreht</translation>
    </message>
    <message>
        <source>came at once or lay still, as a lever does that is put on, and no other pull shows what is usual: pull by hand until the pack breaks away, or record the wheel's angle</source>
        <translation>kam auf einmal oder lag still, wie ein Hebel, der aufgesetzt wird, und kein anderer Zug zeigt, was üblich ist: von Hand ziehen, bis das Paket losbricht, oder den Winkel des Rads aufzeichnen</translation>
    </message>
    <message>
        <source>under 2 % of the transducer's capacity, where no class is calibrated: use a smaller transducer</source>
        <translation>unter 2 % des Nennmoments, wo keine Klasse kalibriert ist: kleineren Aufnehmer nehmen</translation>
    </message>
    <message>
        <source>no peak shows where the slip began: without the wheel's angle, a torque held below the slip would look the same</source>
        <translation>keine Spitze zeigt, wo das Rutschen begann: ohne den Winkel des Rads sähe ein gehaltenes Moment unter dem Rutschen genauso aus</translation>
    </message>
    <message>
        <source>nothing lay still before the ramp, so the torque counts from its foot and the interval is wide: rest a second before you pull</source>
        <translation>vor dem Anstieg lag nichts still, darum zählt das Moment von seinem Fuß an und das Intervall ist weit: vor dem Ziehen eine Sekunde ruhen</translation>
    </message>
    <message>
        <source>the reading jumped and then stood as still as at rest: the transducer has set its zero by itself; take the zero again with the lever hanging</source>
        <translation>die Anzeige sprang und stand dann still wie in Ruhe: der Aufnehmer hat seine Null selbst gesetzt; Null mit hängendem Hebel noch einmal nehmen</translation>
    </message>
    <message>
        <source>%1 readings at the transducer's limit: use a larger one</source>
        <translation>%1 Messwerte am Ende des Messbereichs: größeren Aufnehmer nehmen</translation>
    </message>
    <message>
        <source>%1 readings beyond the transducer's range: use a larger one</source>
        <translation>%1 Messwerte über dem Messbereich: größeren Aufnehmer nehmen</translation>
    </message>
    <message>
        <source>samples are missing at the breakaway: bring the receiver nearer, pull again</source>
        <translation>am Losbrechen fehlen Messwerte: Empfänger näher bringen, noch einmal ziehen</translation>
    </message>
    <message>
        <source>jerked to its peak in %1 s: take two seconds for the first slip</source>
        <translation>in %1 s zur Spitze geruckt: zwei Sekunden bis zum ersten Rutschen nehmen</translation>
    </message>
    <message>
        <source>rose %1 N·m between two readings, so the breakaway's interval is wide: pull %2 times slower, or measure faster</source>
        <translation>stieg um %1 N·m zwischen zwei Messwerten, darum ist das Intervall des Losbrechens weit: %2-mal langsamer ziehen oder schneller messen</translation>
    </message>
    <message>
        <source>the trace lay still at two levels before the ramp, %1 and %2 N·m: the torque counts from the first, the interval reaches the other; rest a second before you pull</source>
        <translation>vor dem Anstieg lag die Kurve auf zwei Niveaus still, %1 und %2 N·m: das Moment zählt vom ersten an, das Intervall reicht bis zum anderen; vor dem Ziehen eine Sekunde ruhen</translation>
    </message>
    <message>
        <source>the reading stood still for %1 s under load: check the link</source>
        <translation>die Anzeige stand %1 s unter Last still: Verbindung prüfen</translation>
    </message>
    <message>
        <source>the torque went on changing by %1 % while turning: nothing steady to state</source>
        <translation>das Moment änderte sich beim Drehen weiter um %1 %: nichts Stetiges anzugeben</translation>
    </message>
    <message>
        <source>a fluid coupling or a dragging brake does that</source>
        <translation>so verhält sich eine Viskokupplung oder eine schleifende Bremse</translation>
    </message>
    <message>
        <source>the torque kept to %1 for about as long: no one level to state</source>
        <translation>das Moment blieb bei %1 etwa gleich lang: kein einzelnes Niveau anzugeben</translation>
    </message>
    <message>
        <source>turn at one speed, which a fluid coupling follows</source>
        <translation>mit gleichbleibendem Tempo drehen, dem eine Viskokupplung folgt</translation>
    </message>
    <message>
        <source>only %1 s of steady turning: keep turning evenly, two seconds or more</source>
        <translation>nur %1 s stetig gedreht: gleichmäßig weiterdrehen, zwei Sekunden oder mehr</translation>
    </message>
    <message>
        <source>yanks or hesitations most of the way: turn more evenly</source>
        <translation>meist geruckt oder gezögert: gleichmäßiger drehen</translation>
    </message>
    <message>
        <source>the torque changed by %1 % while turning: the interval reaches both ends</source>
        <translation>das Moment änderte sich beim Drehen um %1 %: das Intervall reicht bis zu beiden Enden</translation>
    </message>
    <message>
        <source>taken back: small beside what came later, so it was no pull but a lever or a hand</source>
        <translation>zurückgenommen: klein neben dem, was später kam, also kein Zug, sondern ein Hebel oder eine Hand</translation>
    </message>
    <message>
        <source>%1 gaps in the stream, %2 s in all, the first at %3 s</source>
        <translation>%1 Lücken im Datenstrom, %2 s insgesamt, die erste bei %3 s</translation>
    </message>
    <message>
        <source>%1 single values stood out like no torque can and were excluded from the pulls</source>
        <translation>%1 einzelne Werte fielen heraus, wie es kein Moment kann, und zählen in den Zügen nicht mit</translation>
    </message>
    <message>
        <source>there are no samples</source>
        <translation>es gibt keine Messwerte</translation>
    </message>
    <message>
        <source>no sample can be used</source>
        <translation>kein Messwert ist brauchbar</translation>
    </message>
    <message>
        <source>no pull with a torque to state was found</source>
        <translation>kein Zug mit einem anzugebenden Moment gefunden</translation>
    </message>
    <message>
        <source>the torque reached the transducer's limit</source>
        <translation>das Moment erreichte das Ende des Messbereichs</translation>
    </message>
    <message>
        <source>%1 of %2 torque values are not numbers and were excluded</source>
        <translation>%1 von %2 Werten des Moments sind keine Zahlen und zählen nicht mit</translation>
    </message>
    <message>
        <source>%1 samples have no usable time and were excluded</source>
        <translation>%1 Messwerte haben keine brauchbare Zeit und zählen nicht mit</translation>
    </message>
    <message>
        <source>%1 samples share a time stamp with the one before; they were spread over the time since the stamp before: record the device's sample counter if it has one</source>
        <translation>%1 Messwerte haben den Zeitstempel des vorigen; sie wurden über die Zeit seit dem vorigen Stempel verteilt: den Zähler des Geräts mit aufzeichnen, falls es einen hat</translation>
    </message>
    <message>
        <source>%1 samples came late or twice (their time had passed) and were excluded</source>
        <translation>%1 Messwerte kamen zu spät oder doppelt (ihre Zeit war vorbei) und zählen nicht mit</translation>
    </message>
    <message>
        <source>the clock was set back %1 times (first at %2 s); times after that are counted on from the sample before</source>
        <translation>die Uhr wurde %1-mal zurückgestellt (zuerst bei %2 s); Zeiten danach zählen vom vorigen Messwert weiter</translation>
    </message>
    <message>
        <source>the reading's step of %1 N·m is a large part of the interval: a finer one would narrow it</source>
        <translation>der Anzeigeschritt von %1 N·m macht viel vom Intervall aus: ein feinerer würde es verengen</translation>
    </message>
    <message>
        <source>the true zero moved by %1 N·m from before to after the pulls: let the transducer warm up, and repeat</source>
        <translation>die wahre Null hat sich von vor bis nach den Zügen um %1 N·m verschoben: Aufnehmer warm werden lassen und wiederholen</translation>
    </message>
    <message>
        <source>the transducer gives no sign: every pull counts as clockwise, its true direction is not known</source>
        <translation>der Aufnehmer gibt kein Vorzeichen: jeder Zug zählt als im Uhrzeigersinn, die wahre Richtung ist nicht bekannt</translation>
    </message>
    <message>
        <source>no valid pull gives the %1 that the limit names</source>
        <translation>kein gültiger Zug gibt, was der Grenzwert nennt: %1</translation>
    </message>
    <message>
        <source>about %1 more pulls like these would settle it, if the value stays where it is</source>
        <translation>etwa %1 weitere Züge wie diese würden es entscheiden, wenn der Wert bleibt, wo er ist</translation>
    </message>
    <message>
        <source>more pulls cannot settle it: what they share (transducer, lever, zero) is ± %1 N·m, the limit is %2 N·m away; state the lever's lengths or use a better transducer</source>
        <translation>mehr Züge können es nicht entscheiden: was sie gemeinsam haben (Aufnehmer, Hebel, Null), macht ± %1 N·m, der Grenzwert ist %2 N·m entfernt; Hebelmaße angeben oder besseren Aufnehmer nehmen</translation>
    </message>
    <message>
        <source>more pulls like these would hardly settle it: they scatter too much for so small a distance</source>
        <translation>mehr Züge wie diese würden es kaum entscheiden: für einen so kleinen Abstand streuen sie zu stark</translation>
    </message>
    <message>
        <source>too few pulls to know their scatter: make three or more, five if you can</source>
        <translation>zu wenige Züge, um ihre Streuung zu kennen: drei oder mehr machen, möglichst fünf</translation>
    </message>
    <message>
        <source>this is a recording for '%1', not of held pulls</source>
        <translation>das ist eine Aufzeichnung für „%1“, nicht von Zügen mit gehaltenem Teil</translation>
    </message>
    <message>
        <source>no separate breakaway peak: the torque at which slip began is compared</source>
        <translation>keine eigene Losbrechspitze: verglichen wird das Moment, bei dem das Rutschen begann</translation>
    </message>
    <message>
        <source>a ratio limit compares two recordings: in gear and in neutral</source>
        <translation>ein Grenzwert für das Verhältnis vergleicht zwei Aufzeichnungen: im Gang und im Leerlauf</translation>
    </message>
    <message>
        <source>rotating</source>
        <translation>in Bewegung</translation>
    </message>
    <message>
        <source>%1 is %2 % of the transducer's capacity (below 20 %): a smaller transducer would give a narrower interval</source>
        <translation>%1 liegt bei %2 % des Nennmoments (unter 20 %): ein kleinerer Aufnehmer gäbe ein engeres Intervall</translation>
    </message>
    <message>
        <source>%1 is %2 % of the transducer's capacity (above 80 %): a jerk may overload it; use a larger one</source>
        <translation>%1 liegt bei %2 % des Nennmoments (über 80 %): ein Ruck kann ihn überlasten; größeren nehmen</translation>
    </message>
    <message>
        <source>the limit</source>
        <translation>der Grenzwert</translation>
    </message>
    <message>
        <source>the highest reading</source>
        <translation>die höchste Anzeige</translation>
    </message>
    <message>
        <source>CERTIFICATE EXPIRED on %1, %2 before this test: have the transducer calibrated</source>
        <translation>KALIBRIERSCHEIN ABGELAUFEN am %1, %2 vor dieser Prüfung: Aufnehmer kalibrieren lassen</translation>
    </message>
    <message>
        <source>%1 days</source>
        <translation>%1 Tage</translation>
    </message>
    <message>
        <source>one day</source>
        <translation>einen Tag</translation>
    </message>
    <message>
        <source>%1 of %2 pulls stood out (%3 N·m)</source>
        <translation>%1 von %2 Zügen fielen heraus (%3 N·m)</translation>
    </message>
    <message>
        <source>%1: scatter not known from so few, %2</source>
        <translation>%1: die Streuung ist aus so wenigen nicht bekannt, %2</translation>
    </message>
    <message>
        <source>one pull</source>
        <translation>ein Zug</translation>
    </message>
    <message>
        <source>a repeatability of %1 % is %2</source>
        <translation>eine Wiederholbarkeit von %1 % ist %2</translation>
    </message>
    <message>
        <source>assumed</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>torque</source>
        <translation>Drehmoment</translation>
    </message>
    <message>
        <source>the value %1 by %2 % from first to last pull (p = %3): warming up or running in; go on until it settles, or compare only at the same temperature</source>
        <translation>der Wert %1 vom ersten zum letzten Zug um %2 % (p = %3): warm werden oder einlaufen; weitermachen, bis er steht, oder nur bei gleicher Temperatur vergleichen</translation>
    </message>
    <message>
        <source>rises</source>
        <translation>steigt</translation>
    </message>
    <message>
        <source>falls</source>
        <translation>fällt</translation>
    </message>
    <message>
        <source>a '%1' fixture takes a %2, but the trace holds a torque</source>
        <translation>eine Vorrichtung „%1“ nimmt „%2“, aber die Kurve enthält ein Drehmoment</translation>
    </message>
    <message>
        <source>force</source>
        <translation>Kraft</translation>
    </message>
    <message>
        <source>angle not known</source>
        <translation>Winkel nicht bekannt</translation>
    </message>
    <message>
        <source>it has no pack: what you would measure is the drag of bearings, seals and gears</source>
        <translation>es hat kein Paket: gemessen würde das Schleppmoment von Lagern, Dichtungen und Zahnrädern</translation>
    </message>
    <message>
        <source>it has no pack: its locking comes from gear thrust under load, and its maker may state a ratio of in-gear to neutral torque instead</source>
        <translation>es hat kein Paket: es sperrt durch den Axialschub der Zahnräder unter Last; sein Hersteller nennt vielleicht ein Verhältnis der Momente im Gang und im Leerlauf</translation>
    </message>
    <message>
        <source>its torque depends on speed and heat, without a breakaway: compare only at a fixed speed and temperature, as its maker says</source>
        <translation>ihr Moment hängt von Tempo und Wärme ab, ohne Losbrechen: nur bei festem Tempo und fester Temperatur vergleichen, wie ihr Hersteller sagt</translation>
    </message>
    <message>
        <source>it locks by teeth: use its maker's function check, both directions and both sides</source>
        <translation>sie sperrt durch Klauen: Funktionsprüfung ihres Herstellers nehmen, beide Richtungen und beide Seiten</translation>
    </message>
    <message>
        <source>its light plates idle until the governor trips, so a low torque is healthy</source>
        <translation>ihre leichten Lamellen laufen leer, bis der Regler auslöst; ein kleines Moment ist also gesund</translation>
    </message>
    <message>
        <source>nothing can slip</source>
        <translation>nichts kann rutschen</translation>
    </message>
    <message>
        <source>Not judged yet: it could also be %1, and this test says nothing about that type; %2.</source>
        <translation>Noch nicht beurteilt: es könnte auch %1 sein, und diese Prüfung sagt nichts über diese Bauart; %2.</translation>
    </message>
    <message>
        <source>look at the tag, the oil's label or the parts list</source>
        <translation>Schild, Ölaufkleber oder Teileliste ansehen</translation>
    </message>
    <message>
        <source>A quarter of a turn of slack is lash or worn tabs, not preload: look inside before measuring.</source>
        <translation>Eine Viertelumdrehung Spiel ist Zahnspiel oder verschlissene Nasen, keine Vorspannung: vor dem Messen hineinsehen.</translation>
    </message>
    <message>
        <source>factor</source>
        <translation>Faktor</translation>
    </message>
    <message>
        <source>The other wheel stands still when the packs are weaker than its own drag plus half the driveline's: a stiff gearbox makes a weak unit look open.</source>
        <translation>Das andere Rad bleibt stehen, wenn die Pakete schwächer sind als sein eigenes Schleppmoment und das halbe des Strangs: ein schwergängiges Getriebe lässt ein schwaches Differential offen aussehen.</translation>
    </message>
    <message>
        <source>judged all the same: %1</source>
        <translation>trotzdem beurteilt: %1</translation>
    </message>
    <message>
        <source>still</source>
        <translation>steht still</translation>
    </message>
    <message>
        <source>the lever is not known, so the torque at the axle is not either</source>
        <translation>der Hebel ist nicht bekannt, also auch nicht das Drehmoment an der Achse</translation>
    </message>
    <message>
        <source>the transducer was on the held side: it does not show the torque at the turned wheel that a limit is for</source>
        <translation>der Aufnehmer war auf der gehaltenen Seite: er zeigt nicht das Moment am gedrehten Rad, für das ein Grenzwert gilt</translation>
    </message>
    <message>
        <source>the interval is wider than the limit's band: no value could be shown to lie within</source>
        <translation>das Intervall ist weiter als die Spanne des Grenzwerts: kein Wert ließe sich als innerhalb zeigen</translation>
    </message>
    <message>
        <source>the pulls scatter by %1 % (gate %2 %): repeat with the same rest before each pull, a smooth ramp and the lever in the same place</source>
        <translation>die Züge streuen um %1 % (Schwelle %2 %): wiederholen, mit gleicher Ruhe vor jedem Zug, gleichmäßigem Anstieg und dem Hebel an derselben Stelle</translation>
    </message>
    <message>
        <source>excluded by the rule stated beforehand</source>
        <translation>ausgeschlossen nach der vorher genannten Regel</translation>
    </message>
    <message>
        <source>kept: exclude a pull only with a reason</source>
        <translation>behalten: einen Zug nur mit Grund ausschließen</translation>
    </message>
    <message>
        <source>an outlier is the pull furthest from the mean, if that is further than in 95 of 100 clean jobs (Grubbs, five pulls or more)</source>
        <translation>ein Ausreißer ist der Zug, der am weitesten vom Mittel liegt, wenn das weiter ist als in 95 von 100 sauberen Aufträgen (Grubbs, ab fünf Zügen)</translation>
    </message>
    <message>
        <source>each direction has its own value; where both were pulled the less favourable one is judged</source>
        <translation>jede Richtung hat ihren eigenen Wert; wurde in beide gezogen, gilt der ungünstigere</translation>
    </message>
    <message>
        <source>no pull to take a value from</source>
        <translation>kein Zug, aus dem ein Wert zu nehmen wäre</translation>
    </message>
    <message>
        <source>× %1: each pull is like the one before</source>
        <translation>× %1: jeder Zug gleicht dem vorigen</translation>
    </message>
    <message>
        <source>s no less than one reading leaves open</source>
        <translation>s nicht kleiner, als eine Ablesung offen lässt</translation>
    </message>
    <message>
        <source>what each reading leaves open</source>
        <translation>was jede Ablesung offen lässt</translation>
    </message>
    <message>
        <source>pull-to-pull scatter</source>
        <translation>Streuung von Zug zu Zug</translation>
    </message>
    <message>
        <source>repeatability</source>
        <translation>Wiederholbarkeit</translation>
    </message>
    <message>
        <source>the lever is not known: torque at the axle is not stated; give --lever, or [lever] in a sidecar</source>
        <translation>der Hebel ist nicht bekannt: das Drehmoment an der Achse fehlt; --lever angeben oder [lever] in der Beidatei</translation>
    </message>
    <message>
        <source>the fixture is not known: torque at the axle is not stated; give it in Edit details, or with --lever</source>
        <translation>die Vorrichtung ist nicht bekannt: das Drehmoment an der Achse fehlt; unter „Angaben ändern“ angeben oder mit --lever</translation>
    </message>
    <message>
        <source>no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's weight, not stated, is assumed in the interval</source>
        <translation>keine wahre Null (Hebel hängend oder ab): an der Achse zählt das Moment vom Niveau ohne Hand, und das nicht angegebene Hebelgewicht ist im Intervall angenommen</translation>
    </message>
    <message>
        <source>no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's weight is in the interval</source>
        <translation>keine wahre Null (Hebel hängend oder ab): an der Achse zählt das Moment vom Niveau ohne Hand, und das Hebelgewicht ist im Intervall</translation>
    </message>
    <message>
        <source>accuracy not stated: assumed within ± %1 % of reading</source>
        <translation>Genauigkeit nicht angegeben: innerhalb ± %1 % vom Messwert angenommen</translation>
    </message>
    <message>
        <source>lever angle not stated: taken as 0°, in line with the wheel centre and the stud</source>
        <translation>Hebelwinkel nicht angegeben: als 0° genommen, in einer Linie mit Radmitte und Bolzen</translation>
    </message>
    <message>
        <source>the lever is not in line with the stud: the result depends on a square pull; line up centre, stud, lever</source>
        <translation>der Hebel liegt nicht in einer Linie mit dem Bolzen: das Ergebnis hängt vom rechtwinkligen Ziehen ab; Mitte, Bolzen, Hebel fluchten</translation>
    </message>
    <message>
        <source>transducer on the held side: it reads the pack mean less half the driveline drag</source>
        <translation>Aufnehmer auf der gehaltenen Seite: er zeigt das Paketmittel weniger das halbe Schleppmoment des Strangs</translation>
    </message>
    <message>
        <source>lever's weight at hand-off</source>
        <translation>Hebelgewicht ohne Hand</translation>
    </message>
    <message>
        <source>part of a turn</source>
        <translation>Teil einer Umdrehung</translation>
    </message>
    <message>
        <source>full-scale accuracy</source>
        <translation>Genauigkeit vom Endwert</translation>
    </message>
    <message>
        <source>stated for full scale only</source>
        <translation>nur für den Endwert angegeben</translation>
    </message>
    <message>
        <source>hand-off level (no true zero)</source>
        <translation>Niveau ohne Hand (keine wahre Null)</translation>
    </message>
    <message>
        <source>no true zero: lever's weight at an unknown angle</source>
        <translation>keine wahre Null: Hebelgewicht bei unbekanntem Winkel</translation>
    </message>
    <message>
        <source>no true zero, lever's weight not stated: assumed within ± %1 N·m</source>
        <translation>keine wahre Null, Hebelgewicht nicht angegeben: innerhalb ± %1 N·m angenommen</translation>
    </message>
    <message>
        <source>over whole turns it averages to zero</source>
        <translation>über ganze Umdrehungen mittelt es sich heraus</translation>
    </message>
    <message>
        <source>waves of about ± %1 % assumed: turn two whole turns and record the angle</source>
        <translation>Wellen von etwa ± %1 % angenommen: zwei ganze Umdrehungen drehen und den Winkel aufzeichnen</translation>
    </message>
    <message>
        <source>the wheel's speed changed while it turned</source>
        <translation>das Tempo des Rads änderte sich beim Drehen</translation>
    </message>
    <message>
        <source>noise, sampling, boundaries</source>
        <translation>Rauschen, Abtastung, Grenzen</translation>
    </message>
    <message>
        <source>gain %1 divided out; its uncertainty as stated</source>
        <translation>Verstärkung %1 herausgerechnet; Unsicherheit wie angegeben</translation>
    </message>
    <message>
        <source>true zero (%1), before and after</source>
        <translation>wahre Null (%1), vorher und nachher</translation>
    </message>
    <message>
        <source>mark spacing</source>
        <translation>Abstand der Teilstriche</translation>
    </message>
    <message>
        <source>class, as a rectangle</source>
        <translation>Klasse, als Rechteck</translation>
    </message>
    <message>
        <source>class not stated: assumed</source>
        <translation>Klasse nicht angegeben: angenommen</translation>
    </message>
    <message>
        <source>zero as set on the dial</source>
        <translation>Null wie an der Skala gestellt</translation>
    </message>
    <message>
        <source>drive offset</source>
        <translation>Versatz des Vierkants</translation>
    </message>
    <message>
        <source>force radius</source>
        <translation>Kraftradius</translation>
    </message>
    <message>
        <source>drum radius</source>
        <translation>Trommelradius</translation>
    </message>
    <message>
        <source>slope of the arm</source>
        <translation>Neigung des Arms</translation>
    </message>
    <message>
        <source>grip mark</source>
        <translation>Griffmarke</translation>
    </message>
    <message>
        <source>non-linearity</source>
        <translation>Nichtlinearität</translation>
    </message>
    <message>
        <source>the dial's class is not stated: assumed within ± %1 % of reading</source>
        <translation>Klasse der Skala nicht angegeben: innerhalb ± %1 % der Ablesung angenommen</translation>
    </message>
    <message>
        <source>the reading is %1 % of full scale, below the certified part of the range (from %2 %): its error there is taken as that of the lower end</source>
        <translation>die Ablesung ist %1 % vom Skalenende, unter dem zertifizierten Teil des Bereichs (ab %2 %): ihr Fehler ist der des unteren Endes</translation>
    </message>
    <message>
        <source>the marks are %1 % of the reading apart (at most 10 % is usual)</source>
        <translation>die Teilstriche liegen %1 % der Ablesung auseinander (üblich sind höchstens 10 %)</translation>
    </message>
    <message>
        <source>the spacing of the marks is not stated: assumed a tenth of the reading, the widest usual</source>
        <translation>Abstand der Teilstriche nicht angegeben: ein Zehntel der Ablesung angenommen, das weiteste Übliche</translation>
    </message>
    <message>
        <source>the reading is beyond the dial's full scale</source>
        <translation>die Ablesung liegt über dem Skalenende</translation>
    </message>
    <message>
        <source>no both-free baseline: the pack mean cannot be separated from drag</source>
        <translation>keine Vergleichsaufzeichnung mit freien Rädern: das Paketmittel ist nicht vom Schleppmoment zu trennen</translation>
    </message>
    <message>
        <source>drag correction withheld: %1</source>
        <translation>Abzug des Schleppmoments unterbleibt: %1</translation>
    </message>
    <message>
        <source>drag correction of the %1 withheld: the baseline alone explains all of it</source>
        <translation>Abzug des Schleppmoments unterbleibt (%1): die Vergleichsaufzeichnung allein erklärt alles</translation>
    </message>
    <message>
        <source>drag correction of the %1 withheld: the baseline has no %2</source>
        <translation>Abzug des Schleppmoments unterbleibt (%1): die Vergleichsaufzeichnung hat kein %2</translation>
    </message>
    <message>
        <source>no speeds were recorded: turn the baseline at half the wheel speed of the held test, the carrier then turns as fast in both</source>
        <translation>kein Tempo aufgezeichnet: bei freien Rädern halb so schnell drehen wie bei gehaltenem Rad, dann dreht der Korb in beiden gleich schnell</translation>
    </message>
    <message>
        <source>the baseline turned at %1 % of the held test's wheel speed; at half of it the carrier turns as fast in both, and the viscous part of the drag is the same</source>
        <translation>bei freien Rädern wurde mit %1 % des Tempos der Prüfung gedreht; bei der Hälfte dreht der Korb in beiden gleich schnell, und der zähe Teil des Schleppmoments ist gleich</translation>
    </message>
    <message>
        <source>the baseline was turned one way only: it stands for %1 too</source>
        <translation>bei freien Rädern nur in eine Richtung gedreht: gilt auch für %1</translation>
    </message>
    <message>
        <source>its baseline %1 does not lie beside the recording</source>
        <translation>ihre Vergleichsaufzeichnung %1 liegt nicht neben der Aufzeichnung</translation>
    </message>
    <message>
        <source>its baseline %1 has changed since: its SHA-256 differs</source>
        <translation>ihre Vergleichsaufzeichnung %1 hat sich seither geändert: SHA-256 ist anders</translation>
    </message>
    <message>
        <source>its baseline cannot be read: %1</source>
        <translation>ihre Vergleichsaufzeichnung ist nicht zu lesen: %1</translation>
    </message>
    <message>
        <source>the decision rule (%1) was set after the recording had begun; it should be agreed beforehand</source>
        <translation>die Entscheidungsregel (%1) wurde nach Beginn der Aufzeichnung gesetzt; sie gehört vorher vereinbart</translation>
    </message>
    <message>
        <source>build sheet not used: %1</source>
        <translation>Blatt des Zusammenbaus nicht verwendet: %1</translation>
    </message>
    <message>
        <source>the lever of a force was changed after the recording had begun: its pulls keep the first</source>
        <translation>der Hebel einer Kraft wurde nach Beginn der Aufzeichnung geändert: ihre Züge behalten den ersten</translation>
    </message>
    <message>
        <source>rotating from %1 s to %2 s</source>
        <translation>in Bewegung von %1 s bis %2 s</translation>
    </message>
    <message>
        <source>a correction concerns a pull at %1 s, but none starts there</source>
        <translation>eine Korrektur gilt einem Zug bei %1 s, aber dort beginnt keiner</translation>
    </message>
    <message>
        <source>the correction of the pull at %1 s is not applied: %2</source>
        <translation>die Korrektur des Zugs bei %1 s wird nicht angewendet: %2</translation>
    </message>
    <message>
        <source>there is nothing between %1 s and %2 s</source>
        <translation>zwischen %1 s und %2 s ist nichts</translation>
    </message>
    <message>
        <source>%1 s lies outside the recording</source>
        <translation>%1 s liegt außerhalb der Aufzeichnung</translation>
    </message>
    <message>
        <source>the torque at %1 s is against the pull's direction</source>
        <translation>das Moment bei %1 s ist gegen die Richtung des Zugs</translation>
    </message>
    <message>
        <source>there is no rotating torque between %1 s and %2 s</source>
        <translation>zwischen %1 s und %2 s gibt es kein Drehmoment in Bewegung</translation>
    </message>
    <message>
        <source>the pull has no stretch of rotation: give both ends</source>
        <translation>der Zug hat keine Strecke in Bewegung: beide Enden angeben</translation>
    </message>
    <message>
        <source>bench</source>
        <translation>Bank</translation>
    </message>
    <message>
        <source>car</source>
        <translation>Auto</translation>
    </message>
    <message>
        <source>case held</source>
        <translation>Gehäuse gehalten</translation>
    </message>
    <message>
        <source>nothing held</source>
        <translation>nichts gehalten</translation>
    </message>
    <message>
        <source>case</source>
        <translation>Gehäuse</translation>
    </message>
    <message>
        <source>unsteady</source>
        <translation>unstetig</translation>
    </message>
    <message>
        <source>too short</source>
        <translation>zu kurz</translation>
    </message>
    <message>
        <source>two turns, slowly</source>
        <translation>2 Umdrehungen, langsam</translation>
    </message>
    <message>
        <source>nothing moves: stop</source>
        <translation>nichts dreht: aufhören</translation>
    </message>
    <message>
        <source>Turn each wheel with its brake fully released, drums and cables looked at. What holds?</source>
        <translation>Jedes Rad bei ganz gelöster Bremse drehen, Trommeln und Seile ansehen. Was hält?</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral: turn one by hand. What does the other one do?</source>
        <translation>Beide Antriebsräder angehoben, Leerlauf: eines von Hand drehen. Was tut das andere?</translation>
    </message>
    <message>
        <source>Both wheels raised, gear engaged (propshaft held), engine off: turn one wheel. What happens?</source>
        <translation>Beide Räder angehoben, Gang eingelegt (Kardanwelle gehalten), Motor aus: ein Rad drehen. Was geschieht?</translation>
    </message>
    <message>
        <source>How far does the wheel move before it bites?</source>
        <translation>Wie weit geht das Rad, bevor es greift?</translation>
    </message>
    <message>
        <source>both brakes are free</source>
        <translation>beide Bremsen sind frei</translation>
    </message>
    <message>
        <source>a brake or a cable drags</source>
        <translation>eine Bremse oder ein Seil schleift</translation>
    </message>
    <message>
        <source>not checked</source>
        <translation>nicht geprüft</translation>
    </message>
    <message>
        <source>it turns the same way</source>
        <translation>es dreht in dieselbe Richtung</translation>
    </message>
    <message>
        <source>it turns the other way</source>
        <translation>es dreht andersherum</translation>
    </message>
    <message>
        <source>it stands still</source>
        <translation>es steht still</translation>
    </message>
    <message>
        <source>neither can be turned apart: they always move together</source>
        <translation>keines lässt sich einzeln drehen: sie gehen immer zusammen</translation>
    </message>
    <message>
        <source>hardly any resistance, drag only</source>
        <translation>kaum Widerstand, nur Schleppen</translation>
    </message>
    <message>
        <source>a firm, even drag once it has broken away</source>
        <translation>nach dem Losbrechen ein kräftiger, gleichmäßiger Widerstand</translation>
    </message>
    <message>
        <source>a light, even drag</source>
        <translation>ein leichter, gleichmäßiger Widerstand</translation>
    </message>
    <message>
        <source>it gets stiffer with speed, or with time; no breakaway</source>
        <translation>es wird steifer mit dem Tempo oder mit der Zeit; kein Losbrechen</translation>
    </message>
    <message>
        <source>free one way, locks when moved back</source>
        <translation>in eine Richtung frei, sperrt beim Zurückdrehen</translation>
    </message>
    <message>
        <source>it cannot be turned</source>
        <translation>es lässt sich nicht drehen</translation>
    </message>
    <message>
        <source>the other turns the opposite way, easily</source>
        <translation>das andere dreht leicht andersherum</translation>
    </message>
    <message>
        <source>about twice as hard as with one wheel held</source>
        <translation>etwa doppelt so schwer wie mit einem gehaltenen Rad</translation>
    </message>
    <message>
        <source>very much harder than in neutral</source>
        <translation>sehr viel schwerer als im Leerlauf</translation>
    </message>
    <message>
        <source>it cannot be turned by hand</source>
        <translation>es lässt sich nicht von Hand drehen</translation>
    </message>
    <message>
        <source>not tried</source>
        <translation>nicht versucht</translation>
    </message>
    <message>
        <source>a few degrees</source>
        <translation>einige Grad</translation>
    </message>
    <message>
        <source>a quarter of a turn or more</source>
        <translation>eine Viertelumdrehung oder mehr</translation>
    </message>
    <message>
        <source>Not judged: free both brakes first; a dragging brake or a seized shoe imitates a tight pack.</source>
        <translation>Nicht beurteilt: erst beide Bremsen freimachen; eine schleifende Bremse oder festsitzende Backe sieht aus wie ein strammes Paket.</translation>
    </message>
    <message>
        <source>Nothing fits all of this: try again with the brakes free, both wheels raised and the gearbox in neutral.</source>
        <translation>Nichts passt zu alledem: noch einmal versuchen, mit freien Bremsen, beiden Rädern angehoben und Getriebe im Leerlauf.</translation>
    </message>
    <message>
        <source>this test says nothing about this type of axle, %1</source>
        <translation>diese Prüfung sagt nichts über diese Bauart, %1</translation>
    </message>
    <message>
        <source>the axle's type is not settled: it could be %1, and this test says nothing about that type</source>
        <translation>die Bauart steht nicht fest: es könnte %1 sein, und darüber sagt diese Prüfung nichts</translation>
    </message>
    <message>
        <source>a brake was not free: it imitates a tight pack</source>
        <translation>eine Bremse war nicht frei: das sieht aus wie ein strammes Paket</translation>
    </message>
    <message>
        <source>the axle's type is %1, but %2</source>
        <translation>die Bauart ist %1, aber %2</translation>
    </message>
    <message>
        <source>Engine off and key away, car on stands, wheels on the floor chocked, brakes released.</source>
        <translation>Motor aus und Schlüssel weg, Auto auf Böcken, Räder am Boden verkeilt, Bremsen gelöst.</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>before lifting</source>
        <translation>vor dem Anheben</translation>
    </message>
    <message>
        <source>before pulling</source>
        <translation>vor dem Ziehen</translation>
    </message>
    <message>
        <source>while pulling</source>
        <translation>beim Ziehen</translation>
    </message>
    <message>
        <source>after the test</source>
        <translation>nach der Prüfung</translation>
    </message>
    <message>
        <source>reading it</source>
        <translation>beim Ablesen</translation>
    </message>
    <message>
        <source>In gear</source>
        <translation>Im Gang</translation>
    </message>
    <message>
        <source>clockwise</source>
        <translation>im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>anticlockwise</source>
        <translation>gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>1 pull</source>
        <translation>1 Zug</translation>
    </message>
    <message>
        <source>median of %1 pulls</source>
        <translation>Median von %1 Zügen</translation>
    </message>
    <message>
        <source>within</source>
        <translation>innerhalb</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>außerhalb</translation>
    </message>
    <message>
        <source>too close to call</source>
        <translation>zu knapp für ein Urteil</translation>
    </message>
    <message>
        <source>not valid</source>
        <translation>ungültig</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>%1: %2 at the axle</source>
        <translation>%1: %2 an der Achse</translation>
    </message>
    <message>
        <source>Torque against time</source>
        <translation>Drehmoment über der Zeit</translation>
    </message>
    <message>
        <source>nothing was received for %1 s within this pull: what the torque did then is not known</source>
        <translation>%1 s lang kam in diesem Zug nichts an: was das Drehmoment da tat, ist nicht bekannt</translation>
    </message>
    <message>
        <source>no value</source>
        <translation>kein Wert</translation>
    </message>
    <message>
        <source>simulated</source>
        <translation>simuliert</translation>
    </message>
    <message>
        <source>recovered</source>
        <translation>gerettet</translation>
    </message>
    <message>
        <source>to %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source>Torque</source>
        <translation>Drehmoment</translation>
    </message>
    <message>
        <source>Load smoothly</source>
        <translation>Gleichmäßig belasten</translation>
    </message>
    <message>
        <source>three-way</source>
        <translation>drei Ergebnisse</translation>
    </message>
    <message>
        <source>breakaway</source>
        <translation>Losbrechmoment</translation>
    </message>
    <message>
        <source>in gear ÷ neutral</source>
        <translation>mit Gang ÷ Leerlauf</translation>
    </message>
    <message>
        <source>the load rose ever more slowly and was released: without the wheel's angle it cannot be distinguished from a load below the slip; pull straight on through the knee, and keep turning</source>
        <translation>die Last stieg immer langsamer und wurde weggenommen: ohne den Winkel des Rads ist das nicht von einer Last unter dem Rutschen zu unterscheiden; ohne Zögern durch das Knie ziehen und weiterdrehen</translation>
    </message>
    <message>
        <source>no half second of steady turning: keep turning evenly, two seconds or more</source>
        <translation>keine halbe Sekunde gleichmäßiger Drehung: zwei Sekunden oder länger gleichmäßig weiterdrehen</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>clutch plate</source>
        <translation>Lamellen</translation>
    </message>
    <message>
        <source>cone</source>
        <translation>Kegel</translation>
    </message>
    <message>
        <source>ramp plate</source>
        <translation>Lamellen mit Rampen</translation>
    </message>
    <message>
        <source>helical or worm gear</source>
        <translation>Schräg- oder Schneckenräder</translation>
    </message>
    <message>
        <source>viscous or fluid coupling</source>
        <translation>Visko- oder Flüssigkeitskupplung</translation>
    </message>
    <message>
        <source>automatic locker</source>
        <translation>selbsttätige Sperre</translation>
    </message>
    <message>
        <source>governor-locking with light plates</source>
        <translation>Fliehkraftsperre mit leichten Lamellen</translation>
    </message>
    <message>
        <source>welded or spool</source>
        <translation>verschweißt oder starr durchgehend</translation>
    </message>
    <message>
        <source>Slack</source>
        <translation>Spiel</translation>
    </message>
    <message>
        <source>One wheel held</source>
        <translation>Ein Rad gehalten</translation>
    </message>
    <message>
        <source>Both wheels up</source>
        <translation>Beide Räder frei</translation>
    </message>
    <message>
        <source>One wheel held, neutral: turn the other slowly through a full turn. What does it feel like?</source>
        <translation>Ein Rad gehalten, Leerlauf: das andere langsam einmal ganz herumdrehen. Wie fühlt es sich an?</translation>
    </message>
    <message>
        <source>A unit with packs (%1): the held-wheel torque measures their mean friction.</source>
        <translation>Ein Differential mit Paketen (%1): das Moment bei gehaltenem Rad misst ihre mittlere Reibung.</translation>
    </message>
    <message>
        <source>Ramps act only with drive torque: in neutral only the preload of a ramp unit is seen.</source>
        <translation>Rampen wirken nur mit Antriebsmoment: Im Leerlauf zeigt sich nur die Vorspannung.</translation>
    </message>
    <message>
        <source>Worn cones bottom out and then behave like an open unit.</source>
        <translation>Verschlissene Kegel liegen auf und verhalten sich dann wie ein offenes Differential.</translation>
    </message>
    <message>
        <source>a ratio in gear ÷ neutral is for both wheels free; in this test one part was held</source>
        <translation>ein Verhältnis mit Gang ÷ Leerlauf gilt für beide Räder frei; in dieser Prüfung war ein Teil gehalten</translation>
    </message>
    <message>
        <source>at least %1</source>
        <translation>mindestens %1</translation>
    </message>
    <message>
        <source>at most %1</source>
        <translation>höchstens %1</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>calibration</source>
        <translation>Kalibrierung</translation>
    </message>
    <message>
        <source>stated ± %1 % of reading (95 %)</source>
        <translation>angegeben ± %1 % vom Messwert (95 %)</translation>
    </message>
    <message>
        <source>way of reading</source>
        <translation>Art des Auswertens</translation>
    </message>
    <message>
        <source>filter, sample rate, what counts as the level: alike in every pull</source>
        <translation>Filter, Abtastrate, was als Niveau gilt: in jedem Zug gleich</translation>
    </message>
    <message>
        <source>lever's weight, not sensed</source>
        <translation>Eigengewicht des Hebels, nicht gemessen</translation>
    </message>
    <message>
        <source>angle not known; over whole turns it averages to zero</source>
        <translation>Winkel nicht bekannt; über ganze Umdrehungen mittelt es sich heraus</translation>
    </message>
    <message>
        <source>lever, second order</source>
        <translation>Hebel, zweite Ordnung</translation>
    </message>
    <message>
        <source>JCGM 100, 5.1.2 note</source>
        <translation>JCGM 100, 5.1.2 Anmerkung</translation>
    </message>
    <message>
        <source>lever length</source>
        <translation>Hebellänge</translation>
    </message>
    <message>
        <source>stated</source>
        <translation>angegeben</translation>
    </message>
    <message>
        <source>stud radius</source>
        <translation>Lochkreisradius</translation>
    </message>
    <message>
        <source>true zero</source>
        <translation>wahre Null</translation>
    </message>
    <message>
        <source>lever angle</source>
        <translation>Hebelwinkel</translation>
    </message>
    <message>
        <source>pull angle</source>
        <translation>Zugwinkel</translation>
    </message>
    <message>
        <source>axle</source>
        <translation>Achse</translation>
    </message>
    <message>
        <source>condition</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source>customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>oil</source>
        <translation>Öl</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>modifier</source>
        <translation>Reibungszusatz</translation>
    </message>
    <message>
        <source>operator</source>
        <translation>Prüfer</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>shim %1 in</source>
        <translation>Ausgleichsscheibe %1 in</translation>
    </message>
    <message>
        <source>shim %1 mm</source>
        <translation>Ausgleichsscheibe %1 mm</translation>
    </message>
    <message>
        <source>side</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>type</source>
        <translation>Bauart</translation>
    </message>
    <message>
        <source>vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>Recording</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>never slipped</source>
        <translation>nie losgebrochen</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>every second turn of the wheel</source>
        <translation>bei jeder zweiten Umdrehung des Rades</translation>
    </message>
    <message>
        <source>once per turn of the wheel</source>
        <translation>einmal je Umdrehung des Rades</translation>
    </message>
    <message>
        <source>twice per turn of the wheel</source>
        <translation>zweimal je Umdrehung des Rades</translation>
    </message>
    <message>
        <source>once per turn of the pinion</source>
        <translation>einmal je Umdrehung des Ritzels</translation>
    </message>
    <message>
        <source>twice per turn of the pinion</source>
        <translation>zweimal je Umdrehung des Ritzels</translation>
    </message>
    <message>
        <source>a plate or spring that is uneven: the packs slip once round in two turns of the wheel</source>
        <translation>eine ungleiche Scheibe oder Feder: die Pakete gleiten in zwei Radumdrehungen einmal herum</translation>
    </message>
    <message>
        <source>a dragging brake, a bent hub, a bearing, an unbalanced wheel, the lever's own weight, or a pack's second wave</source>
        <translation>eine schleifende Bremse, eine krumme Nabe, ein Lager, ein unwuchtiges Rad, das Gewicht des Hebels oder die zweite Welle eines Pakets</translation>
    </message>
    <message>
        <source>an oval drum, a hub drawn out of true by its fixings, or a pack's fourth wave</source>
        <translation>eine unrunde Trommel, eine durch ihre Befestigung verzogene Nabe oder die vierte Welle eines Pakets</translation>
    </message>
    <message>
        <source>gear mesh, a pinion bearing or flange out of true, an unbalanced propshaft</source>
        <translation>der Zahneingriff, ein Ritzellager oder Flansch mit Schlag, eine unwuchtige Gelenkwelle</translation>
    </message>
    <message>
        <source>a universal joint that works at an angle</source>
        <translation>ein abgewinkelt laufendes Kreuzgelenk</translation>
    </message>
    <message>
        <source>Whether the held wheel stayed cannot be told from one angle and the torque: mark tyre and floor with chalk, or record its angle, too (held_angle)</source>
        <translation>Ob das gehaltene Rad stehen blieb, ist aus einem Winkel und dem Drehmoment nicht zu erkennen: Reifen und Boden mit Kreide markieren oder auch seinen Winkel aufzeichnen (held_angle)</translation>
    </message>
    <message>
        <source>the held wheel turned with the other by %1° of %2°: its tyre or strap slipped, not the packs; hold it so that it stays, and pull again</source>
        <translation>das gehaltene Rad drehte sich um %1° von %2° mit: Reifen oder Gurt sind gerutscht, nicht die Pakete; so halten, dass es stehen bleibt, und noch einmal ziehen</translation>
    </message>
    <message>
        <source>the held wheel gave by %1° under load: wind-up and stiffness are mostly of what holds it</source>
        <translation>das gehaltene Rad gab unter Last um %1° nach: Verdrehung und Steifigkeit sind vor allem die seiner Halterung</translation>
    </message>
    <message>
        <source>Locker: both wheels up, in gear, engine off: turn one wheel forward to its stop: it must lock</source>
        <translation>Sperre: beide Räder hoch, Gang eingelegt, Motor aus: ein Rad vorwärts bis zum Anschlag drehen: es muss sperren</translation>
    </message>
    <message>
        <source>Locker: hold that wheel at its stop, turn the other backward: it must come free, with faint, even clicks</source>
        <translation>Sperre: dieses Rad am Anschlag halten, das andere rückwärts drehen: es muss frei werden, mit leisem, gleichmäßigem Klicken</translation>
    </message>
    <message>
        <source>Locker: move that one back to its own stop: it must lock again</source>
        <translation>Sperre: dieses bis zu seinem Anschlag zurückdrehen: es muss wieder sperren</translation>
    </message>
    <message>
        <source>Locker: the same with the sides changed, and both in the other direction</source>
        <translation>Sperre: dasselbe mit vertauschten Seiten und beides in der anderen Richtung</translation>
    </message>
    <message>
        <source>Viscous: turn one wheel slowly, the other held: it must give evenly, without a breakaway</source>
        <translation>Visko: ein Rad langsam drehen, das andere gehalten: es muss gleichmäßig nachgeben, ohne Losbrechen</translation>
    </message>
    <message>
        <source>Viscous: turn it twice as fast: it must resist more; no resistance, or a lock when cold, is a worn-out unit</source>
        <translation>Visko: doppelt so schnell drehen: der Widerstand muss zunehmen; kein Widerstand, oder gesperrt im kalten Zustand, heißt verbraucht</translation>
    </message>
    <message>
        <source>Viscous: look for leaks: a sealed unit is changed, not refilled</source>
        <translation>Visko: auf Undichtigkeit prüfen: eine geschlossene Einheit wird getauscht, nicht aufgefüllt</translation>
    </message>
    <message>
        <source>Governor: both wheels up: its light plates may hardly hold; that is no fault</source>
        <translation>Fliehkraft: beide Räder hoch: ihre leichten Lamellen halten vielleicht kaum; das ist kein Fehler</translation>
    </message>
    <message>
        <source>Governor: whether it locks shows only at a difference of speed: as the maker's manual says, never by hand</source>
        <translation>Fliehkraft: ob sie sperrt, zeigt sich nur bei einem Drehzahlunterschied: nach dem Handbuch des Herstellers, nie von Hand</translation>
    </message>
    <message>
        <source>Geared: turn each wheel through two turns, gear in and neutral: even, without knocks or tight places</source>
        <translation>Zahnrad: jedes Rad zwei Umdrehungen drehen, mit Gang und im Leerlauf: gleichmäßig, ohne Schläge oder schwere Stellen</translation>
    </message>
    <message>
        <source>Geared: where the manual states a ratio in gear ÷ neutral, measure that</source>
        <translation>Zahnrad: wo das Handbuch ein Verhältnis mit Gang ÷ Leerlauf nennt, dieses messen</translation>
    </message>
    <message>
        <source>Open: turn each wheel through two turns: free and even, the other turns back as far</source>
        <translation>Offen: jedes Rad zwei Umdrehungen drehen: frei und gleichmäßig, das andere dreht ebenso weit zurück</translation>
    </message>
    <message>
        <source>Welded or spool: both wheels turn together, without slack between them</source>
        <translation>Verschweißt oder starr: beide Räder drehen zusammen, ohne Spiel dazwischen</translation>
    </message>
    <message>
        <source>%1: has no angle of the wheel: record one along, or name its column angle_deg</source>
        <translation>%1: enthält keinen Radwinkel: einen mit aufzeichnen oder seine Spalte angle_deg nennen</translation>
    </message>
    <message>
        <source>Held-wheel torque test of a limited-slip differential</source>
        <translation>Drehmomentprüfung eines Sperrdifferentials bei gehaltenem Rad</translation>
    </message>
    <message>
        <source>Limited-slip differential: torque in gear against neutral</source>
        <translation>Sperrdifferential: Drehmoment mit Gang gegen Leerlauf</translation>
    </message>
    <message>
        <source>The results are those of the item described here, in the state and at the time of the test, and of nothing else.</source>
        <translation>Die Ergebnisse gelten für den hier beschriebenen Gegenstand, im Zustand und zur Zeit der Prüfung, und für nichts anderes.</translation>
    </message>
    <message>
        <source>This page is valid only as a whole and is not to be copied in part.</source>
        <translation>Diese Seite gilt nur als Ganzes und darf nicht auszugsweise kopiert werden.</translation>
    </message>
    <message>
        <source>Not tested: behaviour under drive torque, wear of plates and gears, condition of the oil.</source>
        <translation>Nicht geprüft: Verhalten unter Antriebsmoment, Verschleiß von Lamellen und Zahnrädern, Zustand des Öls.</translation>
    </message>
    <message>
        <source>A limit is compared with the torque as read: drag is in it, as in nearly every printed limit.</source>
        <translation>Verglichen wird ein Grenzwert mit dem Drehmoment, wie es gemessen wurde: Schleppmoment ist darin, wie in fast jedem gedruckten Grenzwert.</translation>
    </message>
    <message>
        <source>Torques and result: computed, and again by heldwheel-read report --verify.</source>
        <translation>Drehmomente und Ergebnis: berechnet, und erneut durch heldwheel-read report --verify.</translation>
    </message>
    <message>
        <source>Limit and all else: the issuer's word.</source>
        <translation>Grenzwert und alles andere: Angabe des Ausstellers.</translation>
    </message>
    <message>
        <source>SIMULATED DATA</source>
        <translation>SIMULIERTE DATEN</translation>
    </message>
    <message>
        <source>nothing here was measured on an axle</source>
        <translation>nichts hiervon wurde an einer Achse gemessen</translation>
    </message>
    <message>
        <source>within or outside only if the whole guarded interval lies on one side of the limit; otherwise too close to call</source>
        <translation>innerhalb oder außerhalb nur, wenn das ganze Intervall mit Schutzabstand auf einer Seite des Grenzwerts liegt; sonst zu knapp für ein Urteil</translation>
    </message>
    <message>
        <source>the value alone is compared with the limit, its uncertainty is ignored</source>
        <translation>nur der Wert wird mit dem Grenzwert verglichen, seine Unsicherheit bleibt außer Acht</translation>
    </message>
    <message>
        <source>within only if the whole guarded interval conforms: the uncertainty counts against within</source>
        <translation>innerhalb nur, wenn das ganze Intervall mit Schutzabstand entspricht: die Unsicherheit zählt gegen innerhalb</translation>
    </message>
    <message>
        <source>outside only if the whole guarded interval lies outside: the uncertainty counts against outside</source>
        <translation>außerhalb nur, wenn das ganze Intervall mit Schutzabstand außerhalb liegt: die Unsicherheit zählt gegen außerhalb</translation>
    </message>
    <message>
        <source>risk of a wrong within or outside below %1</source>
        <translation>Risiko eines falschen innerhalb oder außerhalb unter %1</translation>
    </message>
    <message>
        <source>at the limit up to half of all decisions are wrong (shared risk)</source>
        <translation>am Grenzwert ist bis zur Hälfte aller Entscheidungen falsch (geteiltes Risiko)</translation>
    </message>
    <message>
        <source>risk of a wrong within below %1; but what conforms by less than the guard band is called outside</source>
        <translation>Risiko eines falschen innerhalb unter %1; was aber um weniger als den Schutzabstand entspricht, heißt außerhalb</translation>
    </message>
    <message>
        <source>risk of a wrong outside below %1; but what fails by less than the guard band is called within</source>
        <translation>Risiko eines falschen außerhalb unter %1; was aber um weniger als den Schutzabstand verfehlt, heißt innerhalb</translation>
    </message>
    <message>
        <source>The measured torque lies within the limit, its uncertainty taken into account.</source>
        <translation>Das gemessene Drehmoment liegt innerhalb des Grenzwerts, seine Unsicherheit eingerechnet.</translation>
    </message>
    <message>
        <source>The measured torque lies outside the limit, its uncertainty taken into account.</source>
        <translation>Das gemessene Drehmoment liegt außerhalb des Grenzwerts, seine Unsicherheit eingerechnet.</translation>
    </message>
    <message>
        <source>The measured torque is too close to the limit to call: its interval covers the limit.</source>
        <translation>Das gemessene Drehmoment liegt zu knapp am Grenzwert für ein Urteil: sein Intervall schließt den Grenzwert ein.</translation>
    </message>
    <message>
        <source>The test did not give a value that may be judged. The reasons stand below.</source>
        <translation>Die Prüfung ergab keinen Wert, der beurteilt werden darf. Die Gründe stehen unten.</translation>
    </message>
    <message>
        <source>The measured torque lies within the limit; its uncertainty was not considered.</source>
        <translation>Das gemessene Drehmoment liegt innerhalb des Grenzwerts; seine Unsicherheit wurde nicht beachtet.</translation>
    </message>
    <message>
        <source>The measured torque lies outside the limit; its uncertainty was not considered.</source>
        <translation>Das gemessene Drehmoment liegt außerhalb des Grenzwerts; seine Unsicherheit wurde nicht beachtet.</translation>
    </message>
    <message>
        <source>The measured torque was not shown to lie within the limit: by the rule agreed on, the uncertainty counts against it.</source>
        <translation>Es ist nicht gezeigt, dass das gemessene Drehmoment innerhalb des Grenzwerts liegt: nach der vereinbarten Regel zählt die Unsicherheit dagegen.</translation>
    </message>
    <message>
        <source>The measured torque was not shown to lie outside the limit: by the rule agreed on, the uncertainty counts for it.</source>
        <translation>Es ist nicht gezeigt, dass das gemessene Drehmoment außerhalb des Grenzwerts liegt: nach der vereinbarten Regel zählt die Unsicherheit dafür.</translation>
    </message>
    <message>
        <source>The measured ratio lies within the limit, its uncertainty taken into account.</source>
        <translation>Das gemessene Verhältnis liegt innerhalb des Grenzwerts, seine Unsicherheit eingerechnet.</translation>
    </message>
    <message>
        <source>The measured ratio lies outside the limit, its uncertainty taken into account.</source>
        <translation>Das gemessene Verhältnis liegt außerhalb des Grenzwerts, seine Unsicherheit eingerechnet.</translation>
    </message>
    <message>
        <source>The measured ratio is too close to the limit to call: its interval covers the limit.</source>
        <translation>Das gemessene Verhältnis liegt zu knapp am Grenzwert für ein Urteil: sein Intervall schließt den Grenzwert ein.</translation>
    </message>
    <message>
        <source>The measured ratio lies within the limit; its uncertainty was not considered.</source>
        <translation>Das gemessene Verhältnis liegt innerhalb des Grenzwerts; seine Unsicherheit wurde nicht beachtet.</translation>
    </message>
    <message>
        <source>The measured ratio lies outside the limit; its uncertainty was not considered.</source>
        <translation>Das gemessene Verhältnis liegt außerhalb des Grenzwerts; seine Unsicherheit wurde nicht beachtet.</translation>
    </message>
    <message>
        <source>The measured ratio was not shown to lie within the limit: by the rule agreed on, the uncertainty counts against it.</source>
        <translation>Es ist nicht gezeigt, dass das gemessene Verhältnis innerhalb des Grenzwerts liegt: nach der vereinbarten Regel zählt die Unsicherheit dagegen.</translation>
    </message>
    <message>
        <source>The measured ratio was not shown to lie outside the limit: by the rule agreed on, the uncertainty counts for it.</source>
        <translation>Es ist nicht gezeigt, dass das gemessene Verhältnis außerhalb des Grenzwerts liegt: nach der vereinbarten Regel zählt die Unsicherheit dafür.</translation>
    </message>
    <message>
        <source>Functional test: %1; turned slowly by lever.</source>
        <translation>Funktionsprüfung: %1; langsam mit dem Hebel gedreht.</translation>
    </message>
    <message>
        <source>in the car</source>
        <translation>im Auto</translation>
    </message>
    <message>
        <source>on the bench</source>
        <translation>auf dem Prüfstand</translation>
    </message>
    <message>
        <source>place not recorded</source>
        <translation>Ort nicht festgehalten</translation>
    </message>
    <message>
        <source>the other side held</source>
        <translation>die andere Seite gehalten</translation>
    </message>
    <message>
        <source>the case held</source>
        <translation>das Gehäuse gehalten</translation>
    </message>
    <message>
        <source>nothing held (drag)</source>
        <translation>nichts gehalten (Schleppmoment)</translation>
    </message>
    <message>
        <source>held member not recorded</source>
        <translation>gehaltenes Teil nicht festgehalten</translation>
    </message>
    <message>
        <source>gearbox in neutral</source>
        <translation>Getriebe im Leerlauf</translation>
    </message>
    <message>
        <source>gear engaged</source>
        <translation>Gang eingelegt</translation>
    </message>
    <message>
        <source>gear not recorded</source>
        <translation>Gang nicht festgehalten</translation>
    </message>
    <message>
        <source>left side turned</source>
        <translation>linke Seite gedreht</translation>
    </message>
    <message>
        <source>right side turned</source>
        <translation>rechte Seite gedreht</translation>
    </message>
    <message>
        <source>wheel fitted</source>
        <translation>Rad montiert</translation>
    </message>
    <message>
        <source>wheel off</source>
        <translation>Rad abgenommen</translation>
    </message>
    <message>
        <source>brakes free</source>
        <translation>Bremsen frei</translation>
    </message>
    <message>
        <source>BRAKES NOT FREE</source>
        <translation>BREMSEN NICHT FREI</translation>
    </message>
    <message>
        <source>pads fitted</source>
        <translation>Beläge eingebaut</translation>
    </message>
    <message>
        <source>pads out</source>
        <translation>Beläge ausgebaut</translation>
    </message>
    <message>
        <source>parking brake off</source>
        <translation>Feststellbremse gelöst</translation>
    </message>
    <message>
        <source>PARKING BRAKE ON</source>
        <translation>FESTSTELLBREMSE ANGEZOGEN</translation>
    </message>
    <message>
        <source>propshaft fitted</source>
        <translation>Kardanwelle eingebaut</translation>
    </message>
    <message>
        <source>propshaft off</source>
        <translation>Kardanwelle ausgebaut</translation>
    </message>
    <message>
        <source>Speed aimed at %1 turns a minute.</source>
        <translation>Angestrebt %1 Umdrehungen in der Minute.</translation>
    </message>
    <message>
        <source>Turned %1 times before the first pull.</source>
        <translation>Vor dem ersten Zug %1-mal gedreht.</translation>
    </message>
    <message>
        <source>Rest before each pull %1 s.</source>
        <translation>Ruhe vor jedem Zug %1 s.</translation>
    </message>
    <message>
        <source>The same again with the gearbox in neutral.</source>
        <translation>Dasselbe noch einmal mit dem Getriebe im Leerlauf.</translation>
    </message>
    <message>
        <source>In neutral:</source>
        <translation>Im Leerlauf:</translation>
    </message>
    <message>
        <source>In gear:</source>
        <translation>Im Gang:</translation>
    </message>
    <message>
        <source>Neutral:</source>
        <translation>Leerlauf:</translation>
    </message>
    <message>
        <source>Guard band w = %1</source>
        <translation>Schutzabstand w = %1</translation>
    </message>
    <message>
        <source>simple</source>
        <translation>einfach</translation>
    </message>
    <message>
        <source>guarded acceptance</source>
        <translation>Annahme mit Schutzabstand</translation>
    </message>
    <message>
        <source>guarded rejection</source>
        <translation>Ablehnung mit Schutzabstand</translation>
    </message>
    <message>
        <source>Customer report</source>
        <translation>Kundenbericht</translation>
    </message>
    <message>
        <source>Engineer report</source>
        <translation>Technischer Bericht</translation>
    </message>
    <message>
        <source>(workshop not stated)</source>
        <translation>(Werkstatt nicht angegeben)</translation>
    </message>
    <message>
        <source>Limit:</source>
        <translation>Grenzwert:</translation>
    </message>
    <message>
        <source>Probability of conformity:</source>
        <translation>Wahrscheinlichkeit der Konformität:</translation>
    </message>
    <message>
        <source>Rule:</source>
        <translation>Regel:</translation>
    </message>
    <message>
        <source>No pull gave a value that may be used.</source>
        <translation>Kein Zug ergab einen verwendbaren Wert.</translation>
    </message>
    <message>
        <source>end of</source>
        <translation>Ende von</translation>
    </message>
    <message>
        <source>page</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>of</source>
        <translation>von</translation>
    </message>
    <message>
        <source>revision %1</source>
        <translation>Ausgabe %1</translation>
    </message>
    <message>
        <source>issued %1</source>
        <translation>ausgestellt %1</translation>
    </message>
    <message>
        <source>tested by</source>
        <translation>geprüft von</translation>
    </message>
    <message>
        <source>tested by %1</source>
        <translation>geprüft von %1</translation>
    </message>
    <message>
        <source>authorised by</source>
        <translation>freigegeben von</translation>
    </message>
    <message>
        <source>authorised by %1</source>
        <translation>freigegeben von %1</translation>
    </message>
    <message>
        <source>issued</source>
        <translation>ausgestellt</translation>
    </message>
    <message>
        <source>tested</source>
        <translation>geprüft</translation>
    </message>
    <message>
        <source>received</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>not recorded</source>
        <translation>nicht festgehalten</translation>
    </message>
    <message>
        <source>odometer</source>
        <translation>Kilometerstand</translation>
    </message>
    <message>
        <source>type seen</source>
        <translation>beobachtete Bauart</translation>
    </message>
    <message>
        <source>ratio</source>
        <translation>Übersetzung</translation>
    </message>
    <message>
        <source>pack</source>
        <translation>Paket</translation>
    </message>
    <message>
        <source>last service</source>
        <translation>letzte Wartung</translation>
    </message>
    <message>
        <source>as received</source>
        <translation>bei Annahme</translation>
    </message>
    <message>
        <source>done at</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>witness</source>
        <translation>Zeuge</translation>
    </message>
    <message>
        <source>tyre</source>
        <translation>Reifen</translation>
    </message>
    <message>
        <source>held by</source>
        <translation>gehalten durch</translation>
    </message>
    <message>
        <source>stands on</source>
        <translation>steht auf</translation>
    </message>
    <message>
        <source>notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>transducer</source>
        <translation>Aufnehmer</translation>
    </message>
    <message>
        <source>capacity</source>
        <translation>Nennmoment</translation>
    </message>
    <message>
        <source>accuracy</source>
        <translation>Genauigkeit</translation>
    </message>
    <message>
        <source>certificate</source>
        <translation>Kalibrierschein</translation>
    </message>
    <message>
        <source>checked</source>
        <translation>geprüft mit</translation>
    </message>
    <message>
        <source>rate</source>
        <translation>Abtastrate</translation>
    </message>
    <message>
        <source>none recorded</source>
        <translation>keiner festgehalten</translation>
    </message>
    <message>
        <source>used</source>
        <translation>gebraucht</translation>
    </message>
    <message>
        <source>run in</source>
        <translation>eingelaufen</translation>
    </message>
    <message>
        <source>ratio %1</source>
        <translation>Übersetzung %1</translation>
    </message>
    <message>
        <source>teeth %1</source>
        <translation>Zähne %1</translation>
    </message>
    <message>
        <source>firmware %1</source>
        <translation>Firmware %1</translation>
    </message>
    <message>
        <source>of %1</source>
        <translation>vom %1</translation>
    </message>
    <message>
        <source>due %1</source>
        <translation>fällig %1</translation>
    </message>
    <message>
        <source>EXPIRED at the time of the test</source>
        <translation>ABGELAUFEN zur Zeit der Prüfung</translation>
    </message>
    <message>
        <source>temperature not recorded</source>
        <translation>Temperatur nicht festgehalten</translation>
    </message>
    <message>
        <source>± %1 % of %2 (95 %)</source>
        <translation>± %1 % %2 (95 %)</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>vom Messwert</translation>
    </message>
    <message>
        <source>full scale</source>
        <translation>vom Nennmoment</translation>
    </message>
    <message>
        <source>filter delay %1</source>
        <translation>Filterverzögerung %1</translation>
    </message>
    <message>
        <source>%1 samples/s</source>
        <translation>%1 Messwerte/s</translation>
    </message>
    <message>
        <source>noise %1</source>
        <translation>Rauschen %1</translation>
    </message>
    <message>
        <source>between %1 and %2</source>
        <translation>zwischen %1 und %2</translation>
    </message>
    <message>
        <source>both sides' turns taken twice</source>
        <translation>Umdrehungen beider Seiten doppelt gezählt</translation>
    </message>
    <message>
        <source>at the axle</source>
        <translation>an der Achse</translation>
    </message>
    <message>
        <source>at the sensor</source>
        <translation>am Aufnehmer</translation>
    </message>
    <message>
        <source>fixture not known</source>
        <translation>Vorrichtung nicht bekannt</translation>
    </message>
    <message>
        <source>interval 95 %</source>
        <translation>95-%-Intervall</translation>
    </message>
    <message>
        <source>no interval</source>
        <translation>kein Intervall</translation>
    </message>
    <message>
        <source>scatter %1</source>
        <translation>Streuung %1</translation>
    </message>
    <message>
        <source>1 reading</source>
        <translation>1 Ablesung</translation>
    </message>
    <message>
        <source>rotating maxima</source>
        <translation>höchste Drehmomente in Bewegung</translation>
    </message>
    <message>
        <source>both free</source>
        <translation>beide frei</translation>
    </message>
    <message>
        <source>torque at the axle</source>
        <translation>Moment an der Achse</translation>
    </message>
    <message>
        <source>torque at the sensor</source>
        <translation>Moment am Aufnehmer</translation>
    </message>
    <message>
        <source>time, s</source>
        <translation>Zeit, s</translation>
    </message>
    <message>
        <source>dashed: %1</source>
        <translation>gestrichelt: %1</translation>
    </message>
    <message>
        <source>Torque against time, 1 pull marked</source>
        <translation>Drehmoment über der Zeit, 1 Zug markiert</translation>
    </message>
    <message>
        <source>Torque against time, %1 pulls marked</source>
        <translation>Drehmoment über der Zeit, %1 Züge markiert</translation>
    </message>
    <message>
        <source>%1 readings of a dial with their intervals</source>
        <translation>%1 Ablesungen einer Skale mit ihren Intervallen</translation>
    </message>
    <message>
        <source>ring with B: breakaway</source>
        <translation>Ring mit B: Losbrechmoment</translation>
    </message>
    <message>
        <source>ring alone: slip began without a peak</source>
        <translation>Ring allein: Rutschen begann ohne Spitze</translation>
    </message>
    <message>
        <source>thick: steady rotation</source>
        <translation>dick: gleichmäßige Bewegung</translation>
    </message>
    <message>
        <source>numbered bar: pull, crossed if not used</source>
        <translation>nummerierter Balken: Zug, durchkreuzt falls nicht verwendet</translation>
    </message>
    <message>
        <source>shaded: conforms</source>
        <translation>getönt: entspricht</translation>
    </message>
    <message>
        <source>shaded: conforms.</source>
        <translation>getönt: entspricht.</translation>
    </message>
    <message>
        <source>positive: clockwise from outside.</source>
        <translation>positiv: im Uhrzeigersinn von außen.</translation>
    </message>
    <message>
        <source>Ring: a reading at the axle, with its interval (95 %)</source>
        <translation>Ring: eine Ablesung, an der Achse, mit ihrem Intervall (95 %)</translation>
    </message>
    <message>
        <source>Ring: a reading at the axle, with its interval (95 %).</source>
        <translation>Ring: eine Ablesung, an der Achse, mit ihrem Intervall (95 %).</translation>
    </message>
    <message>
        <source>Excluded pulls and warnings</source>
        <translation>Ausgeschlossene Züge und Warnungen</translation>
    </message>
    <message>
        <source>Test and conditions</source>
        <translation>Prüfung und Bedingungen</translation>
    </message>
    <message>
        <source>Corrections</source>
        <translation>Korrekturen</translation>
    </message>
    <message>
        <source>Remarks</source>
        <translation>Bemerkungen</translation>
    </message>
    <message>
        <source>Evidence</source>
        <translation>Nachweise</translation>
    </message>
    <message>
        <source>Readings of the dial</source>
        <translation>Ablesungen der Skale</translation>
    </message>
    <message>
        <source>Drag taken off</source>
        <translation>Schleppmoment abgezogen</translation>
    </message>
    <message>
        <source>Uncertainty of the %1</source>
        <translation>Unsicherheit: %1</translation>
    </message>
    <message>
        <source>Uncertainty of %1</source>
        <translation>Unsicherheit: %1</translation>
    </message>
    <message>
        <source>Combined u = %1, ν = %2, U (95 %) = %3 (JCGM 100).</source>
        <translation>Zusammen u = %1, ν = %2, U (95 %) = %3 (JCGM 100).</translation>
    </message>
    <message>
        <source>Below %1 % each:</source>
        <translation>Je unter %1 %:</translation>
    </message>
    <message>
        <source>no.</source>
        <translation>Nr.</translation>
    </message>
    <message>
        <source>at, s</source>
        <translation>bei, s</translation>
    </message>
    <message>
        <source>turn</source>
        <translation>Dreh.</translation>
    </message>
    <message>
        <source>at sensor</source>
        <translation>Aufnehmer</translation>
    </message>
    <message>
        <source>maximum</source>
        <translation>Höchstwert</translation>
    </message>
    <message>
        <source>chatter</source>
        <translation>Rattern</translation>
    </message>
    <message>
        <source>remark</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>cw</source>
        <translation>im Uhrz.</translation>
    </message>
    <message>
        <source>ccw</source>
        <translation>gegen</translation>
    </message>
    <message>
        <source>no peak</source>
        <translation>keine Spitze</translation>
    </message>
    <message>
        <source>half</source>
        <translation>Hälfte</translation>
    </message>
    <message>
        <source>input</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>share</source>
        <translation>Anteil</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Beitrag</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>sensitivity</source>
        <translation>Empfindl.</translation>
    </message>
    <message>
        <source>quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>rolling</source>
        <translation>Rollen</translation>
    </message>
    <message>
        <source>as read</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>pack mean</source>
        <translation>Paketmittel</translation>
    </message>
    <message>
        <source>how</source>
        <translation>wie</translation>
    </message>
    <message>
        <source>withheld</source>
        <translation>unterbleibt</translation>
    </message>
    <message>
        <source>as above</source>
        <translation>wie oben</translation>
    </message>
    <message>
        <source>forwards</source>
        <translation>vorwärts</translation>
    </message>
    <message>
        <source>backwards</source>
        <translation>rückwärts</translation>
    </message>
    <message>
        <source>Fixture: %1.</source>
        <translation>Vorrichtung: %1.</translation>
    </message>
    <message>
        <source>Fixture: %1; torque at the axle = %2 × torque at the sensor.</source>
        <translation>Vorrichtung: %1; Drehmoment an der Achse = %2 × Drehmoment am Aufnehmer.</translation>
    </message>
    <message>
        <source>Fixture: %1. Zero: as set on the dial.</source>
        <translation>Vorrichtung: %1. Null: wie an der Skale eingestellt.</translation>
    </message>
    <message>
        <source>Fixture: %1; torque at the axle = %2 × torque on the dial. Zero: as set on the dial.</source>
        <translation>Vorrichtung: %1; Drehmoment an der Achse = %2 × Drehmoment an der Skale. Null: wie an der Skale eingestellt.</translation>
    </message>
    <message>
        <source>not known; torque at the axle is not stated</source>
        <translation>nicht bekannt; Drehmoment an der Achse nicht angegeben</translation>
    </message>
    <message>
        <source>length %1</source>
        <translation>Länge %1</translation>
    </message>
    <message>
        <source>stud circle %1</source>
        <translation>Lochkreis %1</translation>
    </message>
    <message>
        <source>%1 studs</source>
        <translation>%1 Bolzen</translation>
    </message>
    <message>
        <source>chord %1</source>
        <translation>Bolzenabstand %1</translation>
    </message>
    <message>
        <source>lever angle %1</source>
        <translation>Hebelwinkel %1</translation>
    </message>
    <message>
        <source>pull angle %1</source>
        <translation>Zugwinkel %1</translation>
    </message>
    <message>
        <source>drive offset %1</source>
        <translation>Versatz des Vierkants %1</translation>
    </message>
    <message>
        <source>radius %1</source>
        <translation>Radius %1</translation>
    </message>
    <message>
        <source>cord %1</source>
        <translation>Schnur %1</translation>
    </message>
    <message>
        <source>lever mass %1</source>
        <translation>Hebelmasse %1</translation>
    </message>
    <message>
        <source>its centre %1 from the drive</source>
        <translation>Schwerpunkt %1 vom Vierkant</translation>
    </message>
    <message>
        <source>Zero %1:</source>
        <translation>Null %1:</translation>
    </message>
    <message>
        <source>the trace's unloaded level</source>
        <translation>das unbelastete Niveau der Spur</translation>
    </message>
    <message>
        <source>Each pull is read from its own hand-off level, and at the axle from the true zero.</source>
        <translation>Jeder Zug wird von seinem eigenen Niveau ohne Hand aus gelesen, an der Achse von der wahren Null aus.</translation>
    </message>
    <message>
        <source>Zero taken again after the pulls: it had moved by %1.</source>
        <translation>Null nach den Zügen noch einmal genommen: sie hatte sich um %1 verschoben.</translation>
    </message>
    <message>
        <source>Known gain %1 (reading / true) divided out.</source>
        <translation>Bekannte Verstärkung %1 (Anzeige / wahr) herausgerechnet.</translation>
    </message>
    <message>
        <source>Deviations from the method: %1</source>
        <translation>Abweichungen vom Verfahren: %1</translation>
    </message>
    <message>
        <source>%1 of %2 pulls not used:</source>
        <translation>%1 von %2 Zügen nicht verwendet:</translation>
    </message>
    <message>
        <source>1 of 1 pull not used:</source>
        <translation>1 von 1 Zug nicht verwendet:</translation>
    </message>
    <message>
        <source>pull %1:</source>
        <translation>Zug %1:</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>what it is</source>
        <translation>was sie ist</translation>
    </message>
    <message>
        <source>both wheels free</source>
        <translation>beide Räder frei</translation>
    </message>
    <message>
        <source>stated and decided beside it</source>
        <translation>daneben angegeben und entschieden</translation>
    </message>
    <message>
        <source>photo: %1</source>
        <translation>Foto: %1</translation>
    </message>
    <message>
        <source>no caption</source>
        <translation>ohne Bildtext</translation>
    </message>
    <message>
        <source>%1 more photos are named in the recording.</source>
        <translation>%1 weitere Fotos sind in der Aufzeichnung genannt.</translation>
    </message>
    <message>
        <source>recording</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>NOT as it was closed; what checks was used</source>
        <translation>NICHT wie abgeschlossen; verwendet wurde, was sich prüfen lässt</translation>
    </message>
    <message>
        <source>a trace from elsewhere</source>
        <translation>eine Spur von anderswo</translation>
    </message>
    <message>
        <source>readings of a dial</source>
        <translation>Ablesungen einer Skale</translation>
    </message>
    <message>
        <source>NOT as it was signed</source>
        <translation>NICHT wie unterschrieben</translation>
    </message>
    <message>
        <source>what was read</source>
        <translation>was abgelesen wurde</translation>
    </message>
    <message>
        <source>dial</source>
        <translation>Skale</translation>
    </message>
    <message>
        <source>scale</source>
        <translation>Teilung</translation>
    </message>
    <message>
        <source>read from</source>
        <translation>abgelesen von</translation>
    </message>
    <message>
        <source>a dial, by eye; there is no trace</source>
        <translation>einer Skale, mit dem Auge; es gibt keine Spur</translation>
    </message>
    <message>
        <source>division %1</source>
        <translation>Skalenteil %1</translation>
    </message>
    <message>
        <source>class %1</source>
        <translation>Klasse %1</translation>
    </message>
    <message>
        <source>p. %1</source>
        <translation>S. %1</translation>
    </message>
    <message>
        <source>%1 pulls</source>
        <translation>%1 Züge</translation>
    </message>
    <message>
        <source>next, try '%1'</source>
        <translation>als Nächstes „%1“ versuchen</translation>
    </message>
    <message>
        <source>the stud lies %1 mm off the centre, the lever is %2 mm long: check units</source>
        <translation>der Bolzen liegt %1 mm neben der Mitte, der Hebel ist %2 mm lang: Einheiten prüfen</translation>
    </message>
    <message>
        <source>true zero (%1)</source>
        <translation>wahre Null (%1)</translation>
    </message>
    <message>
        <source>pull at %1 s: %2</source>
        <translation>Zug bei %1 s: %2</translation>
    </message>
    <message>
        <source>breakaway at %1 s</source>
        <translation>Losbrechen bei %1 s</translation>
    </message>
    <message>
        <source>not seen, below %1°</source>
        <translation>nicht zu sehen, unter %1°</translation>
    </message>
    <message>
        <source>%1, guard band w = %2</source>
        <translation>%1, Schutzabstand w = %2</translation>
    </message>
    <message>
        <source>Not judged: %1.</source>
        <translation>Nicht beurteilt: %1.</translation>
    </message>
    <message>
        <source>true zero (lever off)</source>
        <translation>wahre Null (Hebel ab)</translation>
    </message>
    <message>
        <source>assumed ± %1</source>
        <translation>angenommen ± %1</translation>
    </message>
    <message>
        <source>Pull %1, not seen: %2</source>
        <translation>Zug %1, nicht zu sehen: %2</translation>
    </message>
    <message>
        <source>Pull %1, cannot be told in %2 steady turns: %3</source>
        <translation>Zug %1, in %2 gleichmäßigen Umdrehungen nicht zu erkennen: %3</translation>
    </message>
    <message>
        <source>Pull %1, what repeats per turn: cannot be told, too much varies that does not repeat</source>
        <translation>Zug %1, was sich je Umdrehung wiederholt: nicht zu erkennen, zu viel schwankt, das sich nicht wiederholt</translation>
    </message>
    <message>
        <source>lever hanging</source>
        <translation>Hebel hängt</translation>
    </message>
    <message>
        <source>lever off</source>
        <translation>Hebel ab</translation>
    </message>
    <message>
        <source>unloaded</source>
        <translation>unbelastet</translation>
    </message>
    <message>
        <source>one wheel is held by the floor and a strap, the other is raised on a stand; the lever points outward, in line with wheel centre and stud; the pull is square; the lever hangs free, nobody touches it, the zero is taken; torque rises smoothly in two to three seconds to B, the breakaway, then stays at R; keep turning slowly for two turns while the wheel moves; otherwise stop</source>
        <translation>ein Rad ist durch Boden und Gurt gehalten, das andere steht angehoben auf einem Bock; der Hebel zeigt nach außen, in einer Linie mit Radmitte und Bolzen; gezogen wird rechtwinklig; der Hebel hängt frei, niemand berührt ihn, die Null wird genommen; das Moment steigt in zwei bis drei Sekunden gleichmäßig bis B, dem Losbrechen, und bleibt dann bei R; langsam zwei Umdrehungen weiterdrehen, solange sich das Rad bewegt; sonst aufhören</translation>
    </message>
    <message>
        <source>1  Hold one wheel</source>
        <translation>1  Ein Rad halten</translation>
    </message>
    <message>
        <source>2  Lever in line</source>
        <translation>2  Hebel in Linie</translation>
    </message>
    <message>
        <source>3  Zero</source>
        <translation>3  Null</translation>
    </message>
    <message>
        <source>4  Load smoothly</source>
        <translation>4  Gleichmäßig</translation>
    </message>
    <message>
        <source>5  Keep turning</source>
        <translation>5  Weiterdrehen</translation>
    </message>
    <message>
        <source>Common practice, no source, unless one is named; the vehicle maker's manual, local rules and qualified people decide.</source>
        <translation>Allgemeine Praxis ohne Quelle, wo keine genannt ist; es entscheiden die Anleitung des Fahrzeugherstellers, örtliche Regeln und befähigte Personen.</translation>
    </message>
    <message>
        <source>Record ten figure-eights and a stretch without turning, 20 s and more, as WAV or as a table of acceleration. To compare: same microphone, place, gain, ground and speed, warm oil.</source>
        <translation>Zehn Achten und ein Stück ohne Lenken aufzeichnen, 20 s und mehr, als WAV oder als Tabelle der Beschleunigung. Zum Vergleichen: gleiches Mikrofon, gleicher Platz, gleiche Verstärkung, gleicher Boden, gleiche Geschwindigkeit, warmes Öl.</translation>
    </message>
    <message>
        <source>Chatter by its level in a frequency band: no torque, no limit, no result.</source>
        <translation>Rattern nach seinem Pegel in einem Frequenzband: kein Drehmoment, kein Grenzwert, kein Ergebnis.</translation>
    </message>
    <message>
        <source>The bench's chatter index is the swing of a torque turned by hand: another speed, another load, no common scale.</source>
        <translation>Die Ratterzahl vom Stand ist das Schwanken eines von Hand gedrehten Moments: andere Drehzahl, andere Last, keine gemeinsame Skala.</translation>
    </message>
    <message>
        <source>The interval is the scatter within the two drives alone: speed, road, oil temperature and where the microphone lies add to it.</source>
        <translation>Das Intervall ist allein die Streuung innerhalb der beiden Fahrten: Geschwindigkeit, Straße, Öltemperatur und Platz des Mikrofons kommen hinzu.</translation>
    </message>
    <message>
        <source>dB re full-scale sine</source>
        <translation>dB re Sinus bei Vollaussteuerung</translation>
    </message>
    <message>
        <source>It cannot tell chatter from gear whine, tyre squeal, road noise or anything else at these frequencies: listen to each event.</source>
        <translation>Rattern ist hier nicht von Heulen der Zahnräder, Quietschen der Reifen, Rollgeräusch oder anderem bei diesen Frequenzen zu unterscheiden: jedes Ereignis anhören.</translation>
    </message>
    <message>
        <source>A change of speed, surface or window counts as an event if it is louder; chatter that never pauses is background.</source>
        <translation>Auch andere Geschwindigkeit, anderer Belag oder ein offenes Fenster zählt als Ereignis, wenn es lauter ist; Rattern ohne Pause ist Hintergrund.</translation>
    </message>
    <message>
        <source>A telephone that sets its own gain moves every level: switch that off, or compare shares of time alone.</source>
        <translation>Ein Telefon, das seine Verstärkung selbst stellt, verschiebt jeden Pegel: das abschalten oder nur Zeitanteile vergleichen.</translation>
    </message>
    <message>
        <source>Event %1: %2 to %3 s, %4 dB</source>
        <translation>Ereignis %1: %2 bis %3 s, %4 dB</translation>
    </message>
    <message>
        <source>Event %1: %2 to %3 s, %4 dB, clipped</source>
        <translation>Ereignis %1: %2 bis %3 s, %4 dB, übersteuert</translation>
    </message>
    <message>
        <source>clipped for %1 s: levels there are too low; record with less gain</source>
        <translation>%1 s lang übersteuert: die Pegel dort sind zu niedrig; mit weniger Verstärkung aufzeichnen</translation>
    </message>
    <message>
        <source>Events that stand out: %1, %2 s in all, %3 % of %4 s.</source>
        <translation>Ereignisse, die herausragen: %1, zusammen %2 s, %3 % von %4 s.</translation>
    </message>
    <message>
        <source>Frequency band %1 to %2 Hz; levels in %3.</source>
        <translation>Frequenzband %1 bis %2 Hz; Pegel in %3.</translation>
    </message>
    <message>
        <source>Level of the whole %1 dB; quiet background %2 dB; an event begins at %3 dB.</source>
        <translation>Pegel des Ganzen %1 dB; ruhiger Hintergrund %2 dB; ein Ereignis beginnt bei %3 dB.</translation>
    </message>
    <message>
        <source>the quiet backgrounds differ by %1 dB: gain, place, speed or road were not the same</source>
        <translation>die ruhigen Hintergründe unterscheiden sich um %1 dB: Verstärkung, Platz, Geschwindigkeit oder Straße waren nicht gleich</translation>
    </message>
    <message>
        <source>the largest acceleration stands several times in a row: it may be cut, and levels there are too low</source>
        <translation>die größte Beschleunigung steht mehrmals hintereinander: sie ist vielleicht abgeschnitten, die Pegel dort sind zu niedrig</translation>
    </message>
    <message>
        <source>In this frequency band %1 m/s² rms, the axes together.</source>
        <translation>In diesem Frequenzband %1 m/s² effektiv, die Achsen zusammen.</translation>
    </message>
    <message>
        <source>Bench, axle %1, %2: chatter index %3.</source>
        <translation>Stand, Achse %1, %2: Ratterzahl %3.</translation>
    </message>
    <message>
        <source>Against %1: level %2 ± %3 dB (95 %); share of time %4 points.</source>
        <translation>Gegen %1: Pegel %2 ± %3 dB (95 %); Zeitanteil %4 Punkte.</translation>
    </message>
    <message>
        <source>'%1' is no frequency band; write it as 50-800Hz</source>
        <translation>„%1“ ist kein Frequenzband; so schreiben: 50-800Hz</translation>
    </message>
    <message>
        <source>No recording of axle %1 with a chatter index lies there.</source>
        <translation>Dort liegt keine Aufzeichnung der Achse %1 mit einer Ratterzahl.</translation>
    </message>
    <message>
        <source>the frequency band %1 to %2 Hz does not fit: at %3 samples a second it must lie between 0 and %4 Hz, its upper end a fifth above its lower end at least</source>
        <translation>das Frequenzband %1 bis %2 Hz passt nicht: bei %3 Werten je Sekunde muss es zwischen 0 und %4 Hz liegen, sein oberes Ende wenigstens ein Fünftel über dem unteren</translation>
    </message>
    <message>
        <source>%1 s are too short: the background takes %2 s at least</source>
        <translation>%1 s sind zu kurz: der Hintergrund braucht wenigstens %2 s</translation>
    </message>
    <message>
        <source>%1 s with a level are too short: the background takes %2 s</source>
        <translation>%1 s mit einem Pegel sind zu kurz: der Hintergrund braucht %2 s</translation>
    </message>
    <message>
        <source>a sound and an acceleration, or two frequency bands, have no difference in dB: compare like with like</source>
        <translation>Ton und Beschleunigung oder zwei Frequenzbänder haben keinen Unterschied in dB: Gleiches mit Gleichem vergleichen</translation>
    </message>
    <message>
        <source>%1 s are too short to compare: %2 s at least</source>
        <translation>%1 s sind zu kurz zum Vergleichen: wenigstens %2 s</translation>
    </message>
    <message>
        <source>Recording before: %1</source>
        <translation>Aufzeichnung vorher: %1</translation>
    </message>
    <message>
        <source>gaps of %1 s in all have no level</source>
        <translation>Lücken von zusammen %1 s haben keinen Pegel</translation>
    </message>
    <message>
        <source>%1 rows without a time or an acceleration are passed over</source>
        <translation>%1 Zeilen ohne Zeit oder Beschleunigung werden übergangen</translation>
    </message>
    <message>
        <source>%1: has no column of acceleration: a heading with its unit, like 'x [m/s²]' or 'x [g]'; a sound is read from WAV</source>
        <translation>%1: hat keine Spalte der Beschleunigung: eine Überschrift mit Einheit, wie „x [m/s²]“ oder „x [g]“; Ton wird aus WAV gelesen</translation>
    </message>
    <message>
        <source>%1: has no column of time, in seconds; a sound is read from WAV</source>
        <translation>%1: hat keine Spalte der Zeit, in Sekunden; Ton wird aus WAV gelesen</translation>
    </message>
    <message>
        <source>%1: is a packed sound; save the recording as WAV (PCM)</source>
        <translation>%1: ist ein gepackter Ton; die Aufzeichnung als WAV (PCM) speichern</translation>
    </message>
    <message>
        <source>%1: is no WAV inside; save the recording as WAV (PCM)</source>
        <translation>%1: enthält kein WAV; die Aufzeichnung als WAV (PCM) speichern</translation>
    </message>
    <message>
        <source>%1: cannot be read as WAV: %2; save the recording as WAV (PCM)</source>
        <translation>%1: ist als WAV nicht lesbar: %2; die Aufzeichnung als WAV (PCM) speichern</translation>
    </message>
    <message>
        <source>Drive figure-eights only on closed ground, slowly, with nobody near; a second person records, the driver drives.</source>
        <translation>Achten nur auf abgesperrtem Gelände fahren, langsam, niemand in der Nähe; eine zweite Person zeichnet auf, wer fährt, fährt.</translation>
    </message>
    <message>
        <source>Local law and the maker's manual come first; stop at knocking, binding or a wheel that locks.</source>
        <translation>Örtliches Recht und Handbuch des Herstellers gehen vor; bei Schlagen, Klemmen oder blockierendem Rad anhalten.</translation>
    </message>
    <message>
        <source>Microphone or accelerometer fixed so that it can neither fall nor reach the pedals, belts or wheels.</source>
        <translation>Mikrofon oder Beschleunigungsaufnehmer so befestigt, dass er weder fallen noch an Pedale, Riemen oder Räder geraten kann.</translation>
    </message>
    <message>
        <source>Unlike tyres keep the differential turning: its packs slip and heat.</source>
        <translation>Ungleiche Reifen halten das Differential in Bewegung: seine Pakete rutschen und werden heiß.</translation>
    </message>
    <message>
        <source>Measure both alike: same pressure, same load, rolled out over one turn or taped round the tread.</source>
        <translation>Beide gleich messen: gleicher Druck, gleiche Last, über eine Umdrehung abgerollt oder mit dem Band um die Lauffläche.</translation>
    </message>
    <message>
        <source>Above 1 % of the circumference: put like tyres on this axle before its packs are judged or renewed.</source>
        <translation>Mehr als 1 % des Umfangs: gleiche Reifen auf diese Achse, bevor ihre Pakete beurteilt oder erneuert werden.</translation>
    </message>
    <message>
        <source>Below 1 % of the circumference.</source>
        <translation>Weniger als 1 % des Umfangs.</translation>
    </message>
    <message>
        <source>Whether that is above 1 % of the circumference cannot be told: measure more exactly.</source>
        <translation>Ob das mehr als 1 % des Umfangs ist, lässt sich nicht sagen: genauer messen.</translation>
    </message>
    <message>
        <source>1 % is common practice, no source; the maker's manual comes first.</source>
        <translation>1 % ist übliche Praxis, ohne Quelle; das Handbuch des Herstellers geht vor.</translation>
    </message>
    <message>
        <source>Both tyres are alike.</source>
        <translation>Beide Reifen sind gleich.</translation>
    </message>
    <message>
        <source>The left tyre is larger by %1.</source>
        <translation>Der linke Reifen ist um %1 größer.</translation>
    </message>
    <message>
        <source>The right tyre is larger by %1.</source>
        <translation>Der rechte Reifen ist um %1 größer.</translation>
    </message>
    <message>
        <source>At %1 km/h, straight ahead, the wheels differ by %2 turns a minute: each pack slips at %3, and %4 turns on every kilometre at any speed.</source>
        <translation>Bei %1 km/h geradeaus unterscheiden sich die Räder um %2 Umdrehungen je Minute: jedes Paket rutscht mit %3, und auf jedem Kilometer %4 Umdrehungen bei jeder Geschwindigkeit.</translation>
    </message>
    <message>
        <source>the %1 circumference is %2 m: it must lie between %3 m and %4 m; give the circumference, not the diameter, with its unit</source>
        <translation>der Umfang %1 ist %2 m: er muss zwischen %3 m und %4 m liegen; den Umfang angeben, nicht den Durchmesser, mit Einheit</translation>
    </message>
    <message>
        <source>an uncertainty and a speed cannot be negative</source>
        <translation>eine Unsicherheit und eine Geschwindigkeit können nicht negativ sein</translation>
    </message>
    <message>
        <source>Both driven wheels raised, neutral, engine off. Lever off, push the wheel by hand, stand clear: hands and clothes off what turns.</source>
        <translation>Beide angetriebenen Räder hoch, Leerlauf, Motor aus. Hebel ab, das Rad von Hand anstoßen, zurücktreten: Hände und Kleidung weg von allem, was dreht.</translation>
    </message>
    <message>
        <source>Its drag first, with the transducer, at about that speed; then the wheel's angle is recorded from the push until it stands.</source>
        <translation>Zuerst ihr Schleppmoment mit dem Aufnehmer, bei etwa dieser Drehzahl; dann wird der Radwinkel aufgezeichnet, vom Anstoß bis zum Stillstand.</translation>
    </message>
    <message>
        <source>The inertia is that of everything that turned, referred to the wheel; it changes no reading.</source>
        <translation>Die Trägheit ist die von allem, was drehte, auf das Rad bezogen; sie ändert keine Ablesung.</translation>
    </message>
    <message>
        <source>Inertia %1 ± %2 kg·m² (95 %): slows by %3 rad/s² from %4 to %5 s, from %6 turns a minute on.</source>
        <translation>Trägheit %1 ± %2 kg·m² (95 %): wird um %3 rad/s² langsamer von %4 bis %5 s, ab %6 Umdrehungen je Minute.</translation>
    </message>
    <message>
        <source>The drag's uncertainty is assumed: 5 % of it.</source>
        <translation>Die Unsicherheit des Schleppmoments ist angenommen: 5 % davon.</translation>
    </message>
    <message>
        <source>For less than 2 % of %1: accelerate by less than %2 rad/s², %3 turns a minute in %4 s or more.</source>
        <translation>Für weniger als 2 % von %1: um weniger als %2 rad/s² beschleunigen, %3 Umdrehungen je Minute in %4 s oder mehr.</translation>
    </message>
    <message>
        <source>the drag must be above zero: turn the same parts with the transducer first (a drag test)</source>
        <translation>das Schleppmoment muss über null liegen: dieselben Teile zuerst mit dem Aufnehmer drehen (Schleppmessung)</translation>
    </message>
    <message>
        <source>nothing slows down in this recording: spin the wheel, let it run, and record until it stands</source>
        <translation>in dieser Aufzeichnung wird nichts langsamer: das Rad anstoßen, auslaufen lassen, bis zum Stillstand aufzeichnen</translation>
    </message>
    <message>
        <source>there is no spin-down: the angle must be recorded while the wheel turns half a turn and more</source>
        <translation>das ist kein Auslauf: der Winkel muss aufgezeichnet werden, während das Rad eine halbe Umdrehung und mehr dreht</translation>
    </message>
    <message>
        <source>the spin-down is too short: give the wheel a good push and record until it stands</source>
        <translation>der Auslauf ist zu kurz: das Rad kräftig anstoßen und bis zum Stillstand aufzeichnen</translation>
    </message>
    <message>
        <source>parabola through the angle</source>
        <translation>Parabel durch den Winkel</translation>
    </message>
    <message>
        <source>'%1' is no torque unit; use N·m (Nm), lbf·ft (ft-lb), lbf·in (in-lb), kgf·m, kgf·cm or ozf·in</source>
        <translation>„%1“ ist keine Einheit des Drehmoments; N·m (Nm), lbf·ft (ft-lb), lbf·in (in-lb), kgf·m, kgf·cm oder ozf·in nehmen</translation>
    </message>
    <message>
        <source>new</source>
        <translation>neu</translation>
    </message>
    <message>
        <source>the transducer's accuracy not stated: assumed within ± %1 % of reading</source>
        <translation>Genauigkeit des Aufnehmers nicht angegeben: innerhalb ± %1 % vom Messwert angenommen</translation>
    </message>
    <message>
        <source>lever at %1° ± 15°; over whole turns it averages to zero</source>
        <translation>Hebel bei %1° ± 15°; über ganze Umdrehungen mittelt es sich heraus</translation>
    </message>
    <message>
        <source>%1 N·m and %2 N·m differ by a factor of %3: with the case held or a gear engaged the packs add up, with the other side held they are averaged; check which was held, and neutral</source>
        <translation>%1 N·m und %2 N·m unterscheiden sich um den Faktor %3: bei gehaltenem Gehäuse oder eingelegtem Gang addieren sich die Pakete, bei gehaltener anderer Seite gilt ihr Mittel; prüfen, was gehalten war, und Leerlauf</translation>
    </message>
    <message>
        <source>2 pulls: scatter not known from so few, a repeatability of %1 % is assumed</source>
        <translation>2 Züge: Streuung aus so wenigen nicht bekannt, eine Wiederholbarkeit von %1 % ist angenommen</translation>
    </message>
    <message>
        <source>median of %1 pulls, %2; pooled: a repeatability of %3 % is assumed</source>
        <translation>Median von %1 Zügen, %2; zusammengefasst: eine Wiederholbarkeit von %3 % ist angenommen</translation>
    </message>
    <message>
        <source>the held wheel gave by %1° while the other turned by %2°: its tyre or strap slips; hold it better, speed and angle of the packs are less than they seem</source>
        <translation>das gehaltene Rad gab um %1° nach, während sich das andere um %2° drehte: Reifen oder Gurt rutschen; besser halten, Geschwindigkeit und Winkel der Pakete sind kleiner, als sie scheinen</translation>
    </message>
    <message>
        <source>was never closed (the program or the computer stopped); what checks was recovered</source>
        <translation>wurde nie abgeschlossen (Programm oder Rechner blieb stehen); was sich prüfen lässt, wurde gerettet</translation>
    </message>
    <message>
        <source>was changed after it was closed: its hash does not match. Only rows whose own check holds are used</source>
        <translation>wurde nach dem Abschluss geändert: die Prüfsumme stimmt nicht. Verwendet werden nur Zeilen, deren eigene Prüfung stimmt</translation>
    </message>
    <message>
        <source>its closing line counts other samples than its batches</source>
        <translation>die Schlusszeile zählt andere Messwerte als die Blöcke</translation>
    </message>
    <message>
        <source>its header was changed or damaged: unit, lever and all else it says are not certain</source>
        <translation>der Kopf wurde geändert oder beschädigt: Einheit, Hebel und alles andere darin sind nicht sicher</translation>
    </message>
    <message>
        <source>line %1: %2 rows do not match their check and are excluded</source>
        <translation>Zeile %1: %2 Zeilen stimmen nicht mit ihrer Prüfung überein und sind ausgeschlossen</translation>
    </message>
    <message>
        <source>%1 more batches do not match their checks and are excluded</source>
        <translation>%1 weitere Blöcke stimmen nicht mit ihrer Prüfung überein und sind ausgeschlossen</translation>
    </message>
    <message>
        <source>not one of its batches is whole: nothing in it can be used</source>
        <translation>keiner der Blöcke ist ganz: nichts darin ist verwendbar</translation>
    </message>
    <message>
        <source>its last %1 bytes are no whole batch and are excluded</source>
        <translation>die letzten %1 Bytes sind kein ganzer Block und ausgeschlossen</translation>
    </message>
    <message>
        <source>its header cannot be read (%1); it is taken as empty</source>
        <translation>der Kopf ist nicht lesbar (%1); er gilt als leer</translation>
    </message>
    <message>
        <source>its header says %1, its torque column %2: the column is used</source>
        <translation>der Kopf sagt %1, die Spalte des Drehmoments %2: die Spalte gilt</translation>
    </message>
    <message>
        <source>line %1, the last, is cut short: it is excluded</source>
        <translation>Zeile %1, die letzte, ist abgeschnitten: sie ist ausgeschlossen</translation>
    </message>
    <message>
        <source>%1 rows that are no readings are excluded (first: %2)</source>
        <translation>%1 Zeilen ohne Messwerte sind ausgeschlossen (erste: %2)</translation>
    </message>
    <message>
        <source>%1 changes its unit: all of it is given in %2</source>
        <translation>%1 wechselt die Einheit: alles steht in %2</translation>
    </message>
    <message>
        <source>%1 gives the torque its sign: clockwise is positive</source>
        <translation>%1 gibt dem Drehmoment das Vorzeichen: im Uhrzeigersinn ist positiv</translation>
    </message>
    <message>
        <source>%1 is read as the time since the row before</source>
        <translation>%1 wird als Zeit seit der Zeile davor gelesen</translation>
    </message>
    <message>
        <source>at %1 samples a second the usual frequency band from %2 Hz does not fit: choose one below %3 Hz, or record faster</source>
        <translation>bei %1 Werten je Sekunde passt das übliche Frequenzband ab %2 Hz nicht: eines unter %3 Hz wählen oder schneller aufzeichnen</translation>
    </message>
    <message>
        <source>shim</source>
        <translation>Ausgleichsscheibe</translation>
    </message>
    <message>
        <source>friction disc</source>
        <translation>Belaglamelle</translation>
    </message>
    <message>
        <source>steel plate</source>
        <translation>Stahllamelle</translation>
    </message>
    <message>
        <source>disc spring</source>
        <translation>Tellerfeder</translation>
    </message>
    <message>
        <source>left: %1</source>
        <translation>links: %1</translation>
    </message>
    <message>
        <source>right: %1</source>
        <translation>rechts: %1</translation>
    </message>
    <message>
        <source>stack: %1</source>
        <translation>Paketdicke: %1</translation>
    </message>
    <message>
        <source>shims: %1</source>
        <translation>Ausgleichsscheiben: %1</translation>
    </message>
    <message>
        <source>end play: %1</source>
        <translation>Axialspiel: %1</translation>
    </message>
    <message>
        <source>friction surfaces: %1</source>
        <translation>Reibflächen: %1</translation>
    </message>
    <message>
        <source>stack %1</source>
        <translation>Paketdicke %1</translation>
    </message>
    <message>
        <source>end play %1</source>
        <translation>Axialspiel %1</translation>
    </message>
    <message>
        <source>%1 friction discs</source>
        <translation>%1 Belaglamellen</translation>
    </message>
    <message>
        <source>%1 friction disc</source>
        <translation>%1 Belaglamelle</translation>
    </message>
    <message>
        <source>%1 steel plates</source>
        <translation>%1 Stahllamellen</translation>
    </message>
    <message>
        <source>%1 steel plate</source>
        <translation>%1 Stahllamelle</translation>
    </message>
    <message>
        <source>%1 disc springs</source>
        <translation>%1 Tellerfedern</translation>
    </message>
    <message>
        <source>%1 disc spring</source>
        <translation>%1 Tellerfeder</translation>
    </message>
    <message>
        <source>%1 shims</source>
        <translation>%1 Ausgleichsscheiben</translation>
    </message>
    <message>
        <source>%1 shim</source>
        <translation>%1 Ausgleichsscheibe</translation>
    </message>
    <message>
        <source>%1 friction surfaces</source>
        <translation>%1 Reibflächen</translation>
    </message>
    <message>
        <source>%1 friction surface</source>
        <translation>%1 Reibfläche</translation>
    </message>
    <message>
        <source>shim at %1: %2</source>
        <translation>Ausgleichsscheibe an Stelle %1: %2</translation>
    </message>
    <message>
        <source>friction disc at %1: %2</source>
        <translation>Belaglamelle an Stelle %1: %2</translation>
    </message>
    <message>
        <source>steel plate at %1: %2</source>
        <translation>Stahllamelle an Stelle %1: %2</translation>
    </message>
    <message>
        <source>disc spring at %1: %2</source>
        <translation>Tellerfeder an Stelle %1: %2</translation>
    </message>
    <message>
        <source>%1 taken out (%2)</source>
        <translation>%1 herausgenommen (%2)</translation>
    </message>
    <message>
        <source>%1 put in (%2)</source>
        <translation>%1 eingebaut (%2)</translation>
    </message>
    <message>
        <source>left and right stack differ by %1 mm; some manuals match within %2</source>
        <translation>Paketdicke links und rechts unterscheidet sich um %1 mm; manche Handbücher fordern %2</translation>
    </message>
    <message>
        <source>%1 % of the fill</source>
        <translation>%1 % der Füllung</translation>
    </message>
    <message>
        <source>thickness not stated</source>
        <translation>Dicke nicht angegeben</translation>
    </message>
    <message>
        <source>soaked %1 min in %2</source>
        <translation>%1 min in %2 getränkt</translation>
    </message>
    <message>
        <source>spring load: %1</source>
        <translation>Federkraft: %1</translation>
    </message>
    <message>
        <source>outer diameter of the faces: %1</source>
        <translation>Außendurchmesser der Reibflächen: %1</translation>
    </message>
    <message>
        <source>inner diameter of the faces: %1</source>
        <translation>Innendurchmesser der Reibflächen: %1</translation>
    </message>
    <message>
        <source>preload torque at the pinion: %1</source>
        <translation>Reibmoment am Ritzel: %1</translation>
    </message>
    <message>
        <source>soak: %1</source>
        <translation>Tränken: %1</translation>
    </message>
    <message>
        <source>amount of oil: %1</source>
        <translation>Ölmenge: %1</translation>
    </message>
    <message>
        <source>spring: %1</source>
        <translation>Feder: %1</translation>
    </message>
    <message>
        <source>soaked in: %1</source>
        <translation>getränkt in: %1</translation>
    </message>
    <message>
        <source>oil: %1</source>
        <translation>Öl: %1</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>modifier: %1</source>
        <translation>Reibungszusatz: %1</translation>
    </message>
    <message>
        <source>amount of modifier: %1</source>
        <translation>Menge des Reibungszusatzes: %1</translation>
    </message>
    <message>
        <source>modifier, share of the fill: %1</source>
        <translation>Reibungszusatz, Anteil der Füllung: %1</translation>
    </message>
    <message>
        <source>Build in the axle</source>
        <translation>Aufbau in der Achse</translation>
    </message>
    <message>
        <source>Built:</source>
        <translation>Gebaut:</translation>
    </message>
    <message>
        <source>Each pack:</source>
        <translation>Jedes Paket:</translation>
    </message>
    <message>
        <source>Left pack:</source>
        <translation>Linkes Paket:</translation>
    </message>
    <message>
        <source>Right pack:</source>
        <translation>Rechtes Paket:</translation>
    </message>
    <message>
        <source>Preload:</source>
        <translation>Vorspannung:</translation>
    </message>
    <message>
        <source>Faces:</source>
        <translation>Flächen:</translation>
    </message>
    <message>
        <source>Filled:</source>
        <translation>Eingefüllt:</translation>
    </message>
    <message>
        <source>Soaked:</source>
        <translation>Getränkt:</translation>
    </message>
    <message>
        <source>Friction:</source>
        <translation>Reibung:</translation>
    </message>
    <message>
        <source>%1 N on each pack</source>
        <translation>%1 N auf jedes Paket</translation>
    </message>
    <message>
        <source>pinion %1</source>
        <translation>Ritzel %1</translation>
    </message>
    <message>
        <source>nothing that is stated of both</source>
        <translation>nichts, was von beiden angegeben ist</translation>
    </message>
    <message>
        <source>each pack: %1</source>
        <translation>jedes Paket: %1</translation>
    </message>
    <message>
        <source>pack mean, drag taken off</source>
        <translation>Paketmittel, Schleppmoment abgezogen</translation>
    </message>
    <message>
        <source>build sheet: of the entries used</source>
        <translation>Aufbaublatt: der verwendeten Einträge</translation>
    </message>
    <message>
        <source>second test</source>
        <translation>zweite Prüfung</translation>
    </message>
    <message>
        <source>Second test: %1</source>
        <translation>Zweite Prüfung: %1</translation>
    </message>
    <message>
        <source>agrees</source>
        <translation>stimmt überein</translation>
    </message>
    <message>
        <source>does not agree</source>
        <translation>stimmt nicht überein</translation>
    </message>
    <message>
        <source>first</source>
        <translation>erste</translation>
    </message>
    <message>
        <source>second</source>
        <translation>zweite</translation>
    </message>
    <message>
        <source>second − first</source>
        <translation>zweite − erste</translation>
    </message>
    <message>
        <source>First:</source>
        <translation>Erste:</translation>
    </message>
    <message>
        <source>Second:</source>
        <translation>Zweite:</translation>
    </message>
    <message>
        <source>Mind:</source>
        <translation>Beachten:</translation>
    </message>
    <message>
        <source>operator not stated</source>
        <translation>Prüfer nicht angegeben</translation>
    </message>
    <message>
        <source>transducer not stated</source>
        <translation>Aufnehmer nicht angegeben</translation>
    </message>
    <message>
        <source>Agrees: |E_n| ≤ 1, by √(U₁² + U₂²) (ISO 13528); what both share counts twice.</source>
        <translation>Übereinstimmung: |E_n| ≤ 1, mit √(U₁² + U₂²) (ISO 13528); was beide gemeinsam haben, zählt doppelt.</translation>
    </message>
    <message>
        <source>Not compared by the program before the second was signed.</source>
        <translation>Vom Programm nicht verglichen, bevor die zweite unterschrieben war.</translation>
    </message>
    <message>
        <source>the operator is not stated in both</source>
        <translation>der Prüfer ist nicht in beiden angegeben</translation>
    </message>
    <message>
        <source>the transducer is not stated in both</source>
        <translation>der Aufnehmer ist nicht in beiden angegeben</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 weitere</translation>
    </message>
    <message>
        <source>Changed since %1:</source>
        <translation>Geändert seit %1:</translation>
    </message>
    <message>
        <source>cannot be told</source>
        <translation>nicht zu sagen</translation>
    </message>
    <message>
        <source>as read, drag included: the figure is too high by the drag's share</source>
        <translation>wie gemessen, mit Schleppmoment: die Zahl ist um dessen Anteil zu hoch</translation>
    </message>
    <message>
        <source>Built</source>
        <translation>Aufgebaut</translation>
    </message>
    <message>
        <source>Each pack</source>
        <translation>Jedes Paket</translation>
    </message>
    <message>
        <source>each pack</source>
        <translation>jedes Paket</translation>
    </message>
    <message>
        <source>Left pack</source>
        <translation>Linkes Paket</translation>
    </message>
    <message>
        <source>Right pack</source>
        <translation>Rechtes Paket</translation>
    </message>
    <message>
        <source>Changed since %1</source>
        <translation>Geändert seit %1</translation>
    </message>
    <message>
        <source>Faces</source>
        <translation>Reibflächen</translation>
    </message>
    <message>
        <source>Filled</source>
        <translation>Füllung</translation>
    </message>
    <message>
        <source>Soaked</source>
        <translation>Eingelegt</translation>
    </message>
    <message>
        <source>Friction</source>
        <translation>Reibung</translation>
    </message>
    <message>
        <source>Preload</source>
        <translation>Vorspannung</translation>
    </message>
    <message>
        <source>gear</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Mind</source>
        <translation>Beachte</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Erste</translation>
    </message>
    <message>
        <source>Second</source>
        <translation>Zweite</translation>
    </message>
    <message>
        <source>Second test</source>
        <translation>Zweite Prüfung</translation>
    </message>
    <message>
        <source>its two entries</source>
        <translation>ihre zwei Einträge</translation>
    </message>
    <message>
        <source>its entry</source>
        <translation>ihr Eintrag</translation>
    </message>
    <message>
        <source>%1 is not stated in both</source>
        <translation>%1 ist nicht in beiden angegeben</translation>
    </message>
    <message>
        <source>%1: is the sheet of axle %2; the recording is of %3</source>
        <translation>%1: ist das Blatt der Achse %2; die Aufzeichnung ist von %3</translation>
    </message>
    <message>
        <source>%1: holds no build from before the recording</source>
        <translation>%1: enthält keinen Aufbau von vor der Aufzeichnung</translation>
    </message>
    <message>
        <source>%1 is not signed yet: sign it first, then both tests are shown</source>
        <translation>%1 ist noch nicht unterschrieben: erst unterschreiben, dann werden beide Prüfungen gezeigt</translation>
    </message>
    <message>
        <source>a second test confirms one recording, not a ratio of two</source>
        <translation>eine zweite Prüfung bestätigt eine Aufzeichnung, kein Verhältnis von zweien</translation>
    </message>
    <message>
        <source>a second test stands on the engineer's page (--kind engineer)</source>
        <translation>eine zweite Prüfung steht auf der Ingenieurseite (--kind engineer)</translation>
    </message>
    <message>
        <source>one operator with one transducer made both: that is a repeat, no second opinion</source>
        <translation>ein Prüfer hat beide mit einem Aufnehmer gemacht: das ist eine Wiederholung, keine zweite Prüfung</translation>
    </message>
    <message>
        <source>%1 is %2 itself: a confirmation is a test of its own</source>
        <translation>%1 ist %2 selbst: eine Bestätigung ist eine eigene Prüfung</translation>
    </message>
    <message>
        <source>these are not two tests of one thing: %1</source>
        <translation>das sind nicht zwei Prüfungen einer Sache: %1</translation>
    </message>
</context>
</TS>
