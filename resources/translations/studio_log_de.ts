<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name></name>
    <message>
        <source>Print the s&amp;teps…</source>
        <translation>&amp;Zeitplan drucken …</translation>
    </message>
    <message>
        <source>&amp;Copy the steps as a picture</source>
        <translation>Zeitplan als Bild &amp;kopieren</translation>
    </message>
    <message>
        <source>S&amp;ave the steps as a picture…</source>
        <translation>Zeitplan als Bild &amp;speichern …</translation>
    </message>
    <message>
        <source>Steps over time</source>
        <translation>Schritte im Lauf der Zeit</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Record of the lot</source>
        <translation>Akte der Partie</translation>
    </message>
    <message>
        <source>Begun on</source>
        <translation>Begonnen am</translation>
    </message>
    <message>
        <source>Shelf or place</source>
        <translation>Regal oder Platz</translation>
    </message>
    <message>
        <source>Used</source>
        <translation>Verwendet</translation>
    </message>
    <message>
        <source>Lineage</source>
        <translation>Herkunft</translation>
    </message>
    <message>
        <source>Materials cost</source>
        <translation>Kosten der Materialien</translation>
    </message>
    <message>
        <source>Length × width</source>
        <translation>Länge × Breite</translation>
    </message>
    <message>
        <source>Weight of cloth</source>
        <translation>Flächengewicht</translation>
    </message>
    <message>
        <source>Tests</source>
        <translation>Prüfungen</translation>
    </message>
    <message>
        <source>{n} older photos are not shown here.</source>
        <translation>{n} ältere Fotos sind hier nicht gezeigt.</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Happened</source>
        <translation>Geschehen</translation>
    </message>
    <message>
        <source>Written</source>
        <translation>Geschrieben</translation>
    </message>
    <message>
        <source>corrected to: {words}</source>
        <translation>berichtigt zu: {words}</translation>
    </message>
    <message>
        <source>Save the steps as a picture</source>
        <translation>Zeitplan als Bild speichern</translation>
    </message>
    <message>
        <source>steps.png</source>
        <translation>zeitplan.png</translation>
    </message>
    <message>
        <source>Pictures (*.png)</source>
        <translation>Bilder (*.png)</translation>
    </message>
    <message>
        <source>No lots are in work, so there is no sheet. Nothing was made.</source>
        <translation>Keine Partie ist in Arbeit, also gibt es keinen Zeitplan. Nichts wurde gemacht.</translation>
    </message>
    <message>
        <source>The steps are copied as a picture. Paste them where you need them.</source>
        <translation>Der Zeitplan ist als Bild kopiert. Fügen Sie ihn ein, wo Sie ihn brauchen.</translation>
    </message>
    <message>
        <source>There is too little memory for a picture of this sheet. Nothing was made. Choose a smaller size of text, or print it.</source>
        <translation>Für ein Bild dieses Zeitplans reicht der Speicher nicht. Nichts wurde gemacht. Wählen Sie kleinere Schrift oder drucken Sie ihn.</translation>
    </message>
    <message>
        <source>No printer is set up on this computer. Nothing was printed; save the steps as a picture.</source>
        <translation>Auf diesem Rechner ist kein Drucker eingerichtet. Nichts wurde gedruckt; speichern Sie den Zeitplan als Bild.</translation>
    </message>
    <message>
        <source>{pages} sent to {printer}.</source>
        <translation>{pages} an {printer} gesendet.</translation>
    </message>
    <message>
        <source>A4, 210 × 297 mm</source>
        <translation>A4, 210 × 297 mm</translation>
    </message>
    <message>
        <source>Letter, 8½ × 11 in</source>
        <translation>Letter, 8½ × 11 Zoll</translation>
    </message>
    <message>
        <source>No printer is set up on this computer. Nothing was printed; save the pages as a PDF.</source>
        <translation>Auf diesem Rechner ist kein Drucker eingerichtet. Nichts wurde gedruckt; speichere die Seiten als PDF.</translation>
    </message>
    <message>
        <source>The printing part of the program cannot be loaded here. Nothing was printed. Save the pages as a PDF instead.</source>
        <translation>Der Druckteil des Programms lässt sich hier nicht laden. Nichts wurde gedruckt. Speichere die Seiten als PDF.</translation>
    </message>
    <message>
        <source>To print: {title}</source>
        <translation>Zum Drucken: {title}</translation>
    </message>
    <message>
        <source>What became of the pages</source>
        <translation>Was aus den Seiten wurde</translation>
    </message>
    <message>
        <source>Pape&amp;r</source>
        <translation>Papie&amp;r</translation>
    </message>
    <message>
        <source>1 page</source>
        <translation>1 Seite</translation>
    </message>
    <message>
        <source>{count} pages</source>
        <translation>{count} Seiten</translation>
    </message>
    <message>
        <source>Save the pages as a PDF</source>
        <translation>Die Seiten als PDF speichern</translation>
    </message>
    <message>
        <source>{pages} pages</source>
        <translation>{pages} Seiten</translation>
    </message>
    <message>
        <source>&amp;Take this time</source>
        <translation>Diese Zeit &amp;nehmen</translation>
    </message>
    <message>
        <source>The pieces that leave make a new lot with the same past.</source>
        <translation>Die Stücke, die gehen, bilden eine neue Partie mit derselben Vergangenheit.</translation>
    </message>
    <message>
        <source>Split the lot</source>
        <translation>Die Partie teilen</translation>
    </message>
    <message>
        <source>&amp;Split</source>
        <translation>&amp;Teilen</translation>
    </message>
    <message>
        <source>&amp;Name of the new lot</source>
        <translation>&amp;Name der neuen Partie</translation>
    </message>
    <message>
        <source>Lay at least one piece on the pile that leaves.</source>
        <translation>Mindestens ein Stück auf den Stapel legen, der geht.</translation>
    </message>
    <message>
        <source>At least one piece has to stay.</source>
        <translation>Mindestens ein Stück muss bleiben.</translation>
    </message>
    <message>
        <source>The new lot needs a name.</source>
        <translation>Die neue Partie braucht einen Namen.</translation>
    </message>
    <message>
        <source>Change the lot</source>
        <translation>Die Partie ändern</translation>
    </message>
    <message>
        <source>&amp;Change</source>
        <translation>Ä&amp;ndern</translation>
    </message>
    <message>
        <source>as it is — or 412 g, 14.5 oz</source>
        <translation>wie es ist — oder 412 g, 14.5 oz</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>{code} was stopped. Nothing was joined. Choose a lot that is in work.</source>
        <translation>{code} wurde abgebrochen. Nichts wurde vereinigt. Eine Partie wählen, die in Arbeit ist.</translation>
    </message>
    <message>
        <source>{code} was taken back. Nothing was joined. Choose a lot that is in work.</source>
        <translation>{code} wurde zurückgenommen. Nichts wurde vereinigt. Eine Partie wählen, die in Arbeit ist.</translation>
    </message>
    <message>
        <source>{other} was fully dry {span} before {code}. The cure of the joined lot counts from the later.</source>
        <translation>{other} war {span} vor {code} ganz trocken. Die Reife der vereinigten Partie zählt ab der späteren.</translation>
    </message>
    <message>
        <source>{other} has waited {span} longer than {code}. The later is counted from.</source>
        <translation>{other} hat {span} länger gewartet als {code}. Gezählt wird ab der späteren.</translation>
    </message>
    <message>
        <source>{step} of {other} began {span} before that of {code}. The joined lot counts from the later: keep {span} inside the latest end, for the earlier&apos;s sake.</source>
        <translation>{step} von {other} begann {span} vor {code}. Die vereinigte Partie zählt ab der späteren: der früheren zuliebe {span} vor dem spätesten Ende bleiben.</translation>
    </message>
    <message>
        <source>before scouring</source>
        <translation>vor dem Auskochen</translation>
    </message>
    <message>
        <source>after scouring</source>
        <translation>nach dem Auskochen</translation>
    </message>
    <message>
        <source>nobody said when</source>
        <translation>niemand sagte, wann</translation>
    </message>
    <message>
        <source>A join needs two different lots. Nothing was joined.</source>
        <translation>Zum Vereinigen braucht es zwei verschiedene Partien. Nichts wurde vereinigt.</translation>
    </message>
    <message>
        <source>{code} was joined into {child} already. Nothing was joined.</source>
        <translation>{code} wurde schon zu {child} vereinigt. Nichts wurde vereinigt.</translation>
    </message>
    <message>
        <source>{code} follows {method}, {other} follows {other_method}. Nothing was joined. Let both go on to the same method first.</source>
        <translation>{code} folgt {method}, {other} folgt {other_method}. Nichts wurde vereinigt. Zuerst beide mit derselben Methode weitergehen lassen.</translation>
    </message>
    <message>
        <source>{one}; {other}. Nothing was joined. Bring both to the same step, then join them.</source>
        <translation>{one}; {other}. Nichts wurde vereinigt. Beide zum selben Schritt bringen, dann vereinigen.</translation>
    </message>
    <message>
        <source>The use of {used} is on record, that of {fresh} is not. Nothing was joined. Record the use of {fresh} first, or let each go its way.</source>
        <translation>Die Verwendung von {used} ist aufgeschrieben, die von {fresh} nicht. Nichts wurde vereinigt. Zuerst die Verwendung von {fresh} aufschreiben, oder jede ihren Weg gehen lassen.</translation>
    </message>
    <message>
        <source>{code} is in {step}</source>
        <translation>{code} ist in {step}</translation>
    </message>
    <message>
        <source>{code} has {step} ahead</source>
        <translation>{code} hat {step} vor sich</translation>
    </message>
    <message>
        <source>{code} has no step left</source>
        <translation>{code} hat keinen Schritt mehr vor sich</translation>
    </message>
    <message>
        <source>The weight of {code} is not known. Nothing was joined. Weigh it first.</source>
        <translation>Das Gewicht von {code} ist nicht bekannt. Nichts wurde vereinigt. Sie zuerst wiegen.</translation>
    </message>
    <message>
        <source>Before {method} {code} went through {past}, {other} through {other_past}.</source>
        <translation>Vor {method} ging {code} durch {past}, {other} durch {other_past}.</translation>
    </message>
    <message>
        <source>{code} has had {coats}, {other} {other_coats}.</source>
        <translation>{code} hatte {coats}, {other} {other_coats}.</translation>
    </message>
    <message>
        <source>{n} coat</source>
        <translation>{n} Auftrag</translation>
    </message>
    <message>
        <source>{n} coats</source>
        <translation>{n} Aufträge</translation>
    </message>
    <message>
        <source>{code} was weighed {when}, {other} {other_when}; the weights are added as they are.</source>
        <translation>{code} wurde gewogen {when}, {other} {other_when}; die Gewichte werden so zusammengezählt.</translation>
    </message>
    <message>
        <source>The cure of {code} is {days} d, that of {other} {other_days} d; the longer is taken.</source>
        <translation>Die Reife von {code} ist {days} d, die von {other} {other_days} d; die längere gilt.</translation>
    </message>
    <message>
        <source>The figures that you changed differ; those of {code} are kept.</source>
        <translation>Die geänderten Zahlen unterscheiden sich; die von {code} bleiben.</translation>
    </message>
    <message>
        <source>Beans</source>
        <translation>Bohnen</translation>
    </message>
    <message>
        <source>Soak</source>
        <translation>Einweichen</translation>
    </message>
    <message>
        <source>Spin</source>
        <translation>Schleudern</translation>
    </message>
    <message>
        <source>Cure</source>
        <translation>Reife</translation>
    </message>
    <message>
        <source>Scour</source>
        <translation>Reinigen</translation>
    </message>
    <message>
        <source>Rinse</source>
        <translation>Spülen</translation>
    </message>
    <message>
        <source>as it is — or a number of days: 90</source>
        <translation>wie sie ist — oder eine Zahl von Tagen: 90</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>Eimer</translation>
    </message>
    <message>
        <source>as it is — or 10 L, 2.5 gal</source>
        <translation>wie er ist — oder 10 L, 2.5 gal</translation>
    </message>
    <message>
        <source>&amp;Place</source>
        <translation>&amp;Ort</translation>
    </message>
    <message>
        <source>W&amp;eighed</source>
        <translation>Ge&amp;wogen</translation>
    </message>
    <message>
        <source>A lot needs a name.</source>
        <translation>Eine Partie braucht einen Namen.</translation>
    </message>
    <message>
        <source>One of the figures is not understood; it says why beneath. The rest is kept.</source>
        <translation>Eine der Angaben wird nicht verstanden; darunter steht, warum. Alles andere bleibt stehen.</translation>
    </message>
    <message>
        <source>&amp;Go on</source>
        <translation>&amp;Weiter</translation>
    </message>
    <message>
        <source>&amp;Reason</source>
        <translation>&amp;Grund</translation>
    </message>
    <message>
        <source>Go on to a method</source>
        <translation>Mit einer Methode weitergehen</translation>
    </message>
    <message>
        <source>Its steps follow those of the lot.</source>
        <translation>Ihre Schritte folgen denen der Partie.</translation>
    </message>
    <message>
        <source>&amp;Method</source>
        <translation>&amp;Methode</translation>
    </message>
    <message>
        <source>Studio Log keeps reminding</source>
        <translation>Studio Log erinnert weiter</translation>
    </message>
    <message>
        <source>&amp;Keep reminding</source>
        <translation>&amp;Weiter erinnern</translation>
    </message>
    <message>
        <source>A lot needs a name, as in “Linen table runners”.</source>
        <translation>Eine Partie braucht einen Namen, etwa „Tischläufer aus Leinen“.</translation>
    </message>
    <message>
        <source>Linen table runners</source>
        <translation>Tischläufer aus Leinen</translation>
    </message>
    <message>
        <source>off the scale, if weighed: 412 g, 14.5 oz</source>
        <translation>von der Waage, falls gewogen: 412 g, 14.5 oz</translation>
    </message>
    <message>
        <source>blue tub, if lots share it</source>
        <translation>blauer Zuber, wenn Partien ihn teilen</translation>
    </message>
    <message>
        <source>shelf, line or room, if you like</source>
        <translation>Regal, Leine oder Raum, wenn gewünscht</translation>
    </message>
    <message>
        <source>First step started</source>
        <translation>Erster Schritt begonnen</translation>
    </message>
    <message>
        <source>leave it blank while it has not begun</source>
        <translation>leer lassen, solange er nicht begonnen hat</translation>
    </message>
    <message>
        <source>at eight last night, 13:08, -3h</source>
        <translation>at eight last night, 13:08, -3h</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>Me&amp;thod</source>
        <translation>Me&amp;thode</translation>
    </message>
    <message>
        <source>&amp;Pieces, one line each</source>
        <translation>Stück&amp;e, jedes in einer Zeile</translation>
    </message>
    <message>
        <source>&amp;Weight of the whole, dry</source>
        <translation>&amp;Gewicht des Ganzen, trocken</translation>
    </message>
    <message>
        <source>We&amp;ighed</source>
        <translation>Ge&amp;wogen</translation>
    </message>
    <message>
        <source>&amp;Cure</source>
        <translation>&amp;Reife</translation>
    </message>
    <message>
        <source>&amp;Bucket</source>
        <translation>Ei&amp;mer</translation>
    </message>
    <message>
        <source>Bucket’s na&amp;me</source>
        <translation>Name &amp;des Eimers</translation>
    </message>
    <message>
        <source>P&amp;lace</source>
        <translation>&amp;Ort</translation>
    </message>
    <message>
        <source>&amp;First step started</source>
        <translation>Erster &amp;Schritt begonnen</translation>
    </message>
    <message>
        <source>Start a&amp;fresh</source>
        <translation>&amp;Von vorn beginnen</translation>
    </message>
    <message>
        <source>&amp;First step: “{title}” started</source>
        <translation>Erster &amp;Schritt: „{title}“ begonnen</translation>
    </message>
    <message>
        <source>Typed {when}, not made into a lot yet.</source>
        <translation>Getippt {when}, noch keine Partie daraus.</translation>
    </message>
    <message>
        <source>The timeline tells where lots meet on the line or on a burner. No reminder goes by it.</source>
        <translation>Die Zeitleiste sagt, wo Partien auf der Leine oder am Brenner zusammentreffen. Keine Erinnerung richtet sich danach.</translation>
    </message>
    <message>
        <source>Workshop</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>Vessels</source>
        <translation>Gefäße</translation>
    </message>
    <message>
        <source>without a name</source>
        <translation>ohne Namen</translation>
    </message>
    <message>
        <source>Drying line</source>
        <translation>Trockenleine</translation>
    </message>
    <message>
        <source>length not said</source>
        <translation>Länge nicht angegeben</translation>
    </message>
    <message>
        <source>1 burner</source>
        <translation>1 Flamme</translation>
    </message>
    <message>
        <source>{limit:g} burners</source>
        <translation>{limit:g} Flammen</translation>
    </message>
    <message>
        <source>burners not said</source>
        <translation>Flammen nicht angegeben</translation>
    </message>
    <message>
        <source>Heat</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>Burners</source>
        <translation>Kochstellen</translation>
    </message>
    <message>
        <source>L&amp;ines for vessels, line and heat</source>
        <translation>&amp;Belegung von Gefäßen, Leine und Herd</translation>
    </message>
    <message>
        <source>◂ now {clock}</source>
        <translation>◂ jetzt {clock}</translation>
    </message>
    <message>
        <source>now {clock} ▸</source>
        <translation>jetzt {clock} ▸</translation>
    </message>
    <message>
        <source>Find now: {clock}, earlier than what is seen</source>
        <translation>Jetzt suchen: {clock}, früher als das Gezeigte</translation>
    </message>
    <message>
        <source>Find now: {clock}, later than what is seen</source>
        <translation>Jetzt suchen: {clock}, später als das Gezeigte</translation>
    </message>
    <message>
        <source>Now is out of sight. Click or press N to find it.</source>
        <translation>Jetzt ist außer Sicht. Klicken oder N drücken, um es zu finden.</translation>
    </message>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Monday</source>
        <translation>Montag</translation>
    </message>
    <message>
        <source>Tuesday</source>
        <translation>Dienstag</translation>
    </message>
    <message>
        <source>Wednesday</source>
        <translation>Mittwoch</translation>
    </message>
    <message>
        <source>Thursday</source>
        <translation>Donnerstag</translation>
    </message>
    <message>
        <source>Friday</source>
        <translation>Freitag</translation>
    </message>
    <message>
        <source>Saturday</source>
        <translation>Samstag</translation>
    </message>
    <message>
        <source>Sunday</source>
        <translation>Sonntag</translation>
    </message>
    <message>
        <source>January</source>
        <translation>Januar</translation>
    </message>
    <message>
        <source>February</source>
        <translation>Februar</translation>
    </message>
    <message>
        <source>March</source>
        <translation>März</translation>
    </message>
    <message>
        <source>April</source>
        <translation>April</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>June</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>July</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>August</source>
        <translation>August</translation>
    </message>
    <message>
        <source>September</source>
        <translation>September</translation>
    </message>
    <message>
        <source>October</source>
        <translation>Oktober</translation>
    </message>
    <message>
        <source>November</source>
        <translation>November</translation>
    </message>
    <message>
        <source>December</source>
        <translation>Dezember</translation>
    </message>
    <message>
        <source>{month} {day}</source>
        <translation>{day}. {month}</translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation>{day}. {month}</translation>
    </message>
    <message>
        <source>Soak beans tonight for</source>
        <translation>Heute Abend Bohnen einweichen für</translation>
    </message>
    <message>
        <source>The last piece counts.</source>
        <translation>Das letzte Stück zählt.</translation>
    </message>
    <message>
        <source>Is it dry?</source>
        <translation>Ist es trocken?</translation>
    </message>
    <message>
        <source>{act}: {times}.</source>
        <translation>{act}: {times}.</translation>
    </message>
    <message>
        <source>Session: {acts} acts, lots: {lots}</source>
        <translation>Sitzung: {acts} Handgriffe, Partien: {lots}</translation>
    </message>
    <message>
        <source>Use {code} {name}</source>
        <translation>{code} {name} benutzen</translation>
    </message>
    <message>
        <source>Then at once: {steps}.</source>
        <translation>Danach sofort: {steps}.</translation>
    </message>
    <message>
        <source>At the latest {moment}.</source>
        <translation>Spätestens {moment}.</translation>
    </message>
    <message>
        <source>Last tended</source>
        <translation>Zuletzt bewegt:</translation>
    </message>
    <message>
        <source>In since</source>
        <translation>Drin seit</translation>
    </message>
    <message>
        <source>{title} since {at}; aim {span}.</source>
        <translation>{title} seit {at}; Ziel {span}.</translation>
    </message>
    <message>
        <source> The aim, {at}, falls in quiet hours.</source>
        <translation> Das Ziel, {at}, fällt in die Ruhezeit.</translation>
    </message>
    <message>
        <source>From now on: {low}</source>
        <translation>Ab jetzt: {low}</translation>
    </message>
    <message>
        <source>Last call: {low}</source>
        <translation>Letzter Aufruf: {low}</translation>
    </message>
    <message>
        <source>{limit}, that is {at}.</source>
        <translation>{limit}, das ist {at}.</translation>
    </message>
    <message>
        <source>Too long: {low}</source>
        <translation>Zu lang: {low}</translation>
    </message>
    <message>
        <source>{limit}; that was {at}.</source>
        <translation>{limit}; das war {at}.</translation>
    </message>
    <message>
        <source>Hanging since {at}; the last piece counts.</source>
        <translation>Hängt seit {at}; das letzte Stück zählt.</translation>
    </message>
    <message>
        <source> By its weight and the room it is likely dry at {at}.</source>
        <translation> Nach Gewicht und Raum ist es wohl trocken um {at}.</translation>
    </message>
    <message>
        <source>Still not dry?</source>
        <translation>Noch nicht trocken?</translation>
    </message>
    <message>
        <source>Damp for {span} and more.</source>
        <translation>Seit {span} und länger feucht.</translation>
    </message>
    <message>
        <source>{title} ended {at}.</source>
        <translation>{title} endete {at}.</translation>
    </message>
    <message>
        <source>Late: {low}</source>
        <translation>Zu spät: {low}</translation>
    </message>
    <message>
        <source>Cured, {ready_title}:</source>
        <translation>Ausgereift, {ready_title}:</translation>
    </message>
    <message>
        <source>Day {days} from fully dry.</source>
        <translation>Tag {days} seit ganz trocken.</translation>
    </message>
    <message>
        <source>Paint within two days:</source>
        <translation>Binnen zwei Tagen bemalen:</translation>
    </message>
    <message>
        <source>Takes paint best until day {paint_best_days} from fully dry.</source>
        <translation>Nimmt Farbe am besten an bis Tag {paint_best_days} seit ganz trocken.</translation>
    </message>
    <message>
        <source>Painting time is over:</source>
        <translation>Die Zeit zum Malen ist vorbei:</translation>
    </message>
    <message>
        <source>From day {paint_best_days} on paint sinks in less well.</source>
        <translation>Ab Tag {paint_best_days} dringt Farbe weniger gut ein.</translation>
    </message>
    <message>
        <source>Milk {code} will be too old for {title}, planned next.</source>
        <translation>Milch {code} wird zu alt sein für {title}, den nächsten Schritt.</translation>
    </message>
    <message>
        <source>Without fresh milk the next coat waits a day longer.</source>
        <translation>Ohne frische Milch wartet der nächste Auftrag einen Tag länger.</translation>
    </message>
    <message>
        <source>soak beans</source>
        <translation>Bohnen einweichen</translation>
    </message>
    <message>
        <source>US gal</source>
        <translation>US gal</translation>
    </message>
    <message>
        <source>US cup</source>
        <translation>US-Tasse</translation>
    </message>
    <message>
        <source>US cups</source>
        <translation>US-Tassen</translation>
    </message>
    <message>
        <source>tbsp</source>
        <translation>EL</translation>
    </message>
    <message>
        <source>tsp</source>
        <translation>TL</translation>
    </message>
    <message>
        <source>less than ¼ tsp</source>
        <translation>weniger als ¼ TL</translation>
    </message>
    <message>
        <source>metric cup</source>
        <translation>Tasse (250 mL)</translation>
    </message>
    <message>
        <source>metric cups</source>
        <translation>Tassen (250 mL)</translation>
    </message>
    <message>
        <source>tbsp of 15 mL</source>
        <translation>EL (15 mL)</translation>
    </message>
    <message>
        <source>tsp of 5 mL</source>
        <translation>TL (5 mL)</translation>
    </message>
    <message>
        <source>about {figure} {measure}</source>
        <translation>etwa {figure} {measure}</translation>
    </message>
    <message>
        <source>due already</source>
        <translation>schon fällig</translation>
    </message>
    <message>
        <source>at {at}</source>
        <translation>um {at}</translation>
    </message>
    <message>
        <source>{day}: 1 act, {when}: {words} {code}.</source>
        <translation>{day}: 1 Handgriff, {when}: {words} {code}.</translation>
    </message>
    <message>
        <source>{day}: {count} acts, and all are due already.</source>
        <translation>{day}: {count} Handgriffe, und alle sind schon fällig.</translation>
    </message>
    <message>
        <source>first at {at}</source>
        <translation>der erste um {at}</translation>
    </message>
    <message>
        <source>{n} is due already</source>
        <translation>{n} ist schon fällig</translation>
    </message>
    <message>
        <source>{n} are due already</source>
        <translation>{n} sind schon fällig</translation>
    </message>
    <message>
        <source>, the next at {at}</source>
        <translation>, der nächste um {at}</translation>
    </message>
    <message>
        <source>midnight</source>
        <translation>Mitternacht</translation>
    </message>
    <message>
        <source>{day}: {count} acts, {start}, last before {last}.</source>
        <translation>{day}: {count} Handgriffe, {start}, der letzte vor {last}.</translation>
    </message>
    <message>
        <source>{day}: {count} acts, {start}, last at {last}.</source>
        <translation>{day}: {count} Handgriffe, {start}, der letzte um {last}.</translation>
    </message>
    <message>
        <source>now:</source>
        <translation>jetzt:</translation>
    </message>
    <message>
        <source>and {rest} more</source>
        <translation>und {rest} weitere</translation>
    </message>
    <message>
        <source>Tonight</source>
        <translation>Heute Abend</translation>
    </message>
    <message>
        <source>Good tonight</source>
        <translation>Gut heute Abend</translation>
    </message>
    <message>
        <source>Also: {one}</source>
        <translation>Auch: {one}</translation>
    </message>
    <message>
        <source>And {rest} more.</source>
        <translation>Und {rest} weitere.</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>by {at}</source>
        <translation>bis {at}</translation>
    </message>
    <message>
        <source>{words} for {code} {when}</source>
        <translation>{words} für {code} {when}</translation>
    </message>
    <message>
        <source>{day} at {first}</source>
        <translation>{day} um {first}</translation>
    </message>
    <message>
        <source>{day} {first} to {last}</source>
        <translation>{day} {first} bis {last}</translation>
    </message>
    <message>
        <source>{day} {first} to {until} {last}</source>
        <translation>{day} {first} bis {until} {last}</translation>
    </message>
    <message>
        <source>they end</source>
        <translation>sie enden</translation>
    </message>
    <message>
        <source>it ends</source>
        <translation>es endet</translation>
    </message>
    <message>
        <source>{order} and {ends} {span}.</source>
        <translation>{order}, und {ends} {span}.</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>tomorrow</source>
        <translation>morgen</translation>
    </message>
    <message>
        <source>less than {step} g</source>
        <translation>weniger als {step} g</translation>
    </message>
    <message>
        <source>A scale that shows steps of {step} g is too coarse for it: weigh it on a finer one.</source>
        <translation>Eine Waage mit Schritten von {step} g ist dafür zu grob: auf einer feineren wiegen.</translation>
    </message>
    <message>
        <source>A scale that shows steps of {step} g is too coarse for it: measure {measured} of a {strength} % stock solution ({strength} g made up to 100 mL).</source>
        <translation>Eine Waage mit Schritten von {step} g ist zu grob dafür: {measured} einer {strength}-%-Stammlösung abmessen ({strength} g auf 100 mL aufgefüllt).</translation>
    </message>
    <message>
        <source>{code} makes a QR code too large for this tag. Nothing was printed. Choose a larger tag.</source>
        <translation>{code} ergibt einen QR-Code, der für dieses Etikett zu groß ist. Nichts wurde gedruckt. Ein größeres Etikett wählen.</translation>
    </message>
    <message>
        <source>and {rest} more in the log</source>
        <translation>und {rest} weitere im Buch</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>yesterday {at}</source>
        <translation>gestern {at}</translation>
    </message>
    <message>
        <source>today {at}</source>
        <translation>heute {at}</translation>
    </message>
    <message>
        <source>tomorrow {at}</source>
        <translation>morgen {at}</translation>
    </message>
    <message>
        <source>{figure} US cup</source>
        <translation>{figure} US-Tasse</translation>
    </message>
    <message>
        <source>{figure} US cups</source>
        <translation>{figure} US-Tassen</translation>
    </message>
    <message>
        <source>{figure} US gal</source>
        <translation>{figure} US gal</translation>
    </message>
    <message>
        <source>{words} or more</source>
        <translation>{words} oder mehr</translation>
    </message>
    <message>
        <source>0 min</source>
        <translation>0 min</translation>
    </message>
    <message>
        <source>ahead</source>
        <translation>steht aus</translation>
    </message>
    <message>
        <source>may begin</source>
        <translation>darf beginnen</translation>
    </message>
    <message>
        <source>running</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>{code} {name} — {title}, step {number}: {state}.</source>
        <translation>{code} {name} — {title}, Schritt {number}: {state}.</translation>
    </message>
    <message>
        <source>Start not written, ended {at}.</source>
        <translation>Beginn nicht aufgeschrieben, Ende {at}.</translation>
    </message>
    <message>
        <source>{capital} to {at}, {length}.</source>
        <translation>{capital} bis {at}, {length}.</translation>
    </message>
    <message>
        <source>Since {at}.</source>
        <translation>Seit {at}.</translation>
    </message>
    <message>
        <source> as you planned it</source>
        <translation> wie geplant</translation>
    </message>
    <message>
        <source>Best begun {at}{set_by}.</source>
        <translation>Am besten begonnen {at}{set_by}.</translation>
    </message>
    <message>
        <source>Planned {at} to {at2}</source>
        <translation>Geplant {at} bis {at2}</translation>
    </message>
    <message>
        <source>; begun {off}</source>
        <translation>; begonnen {off}</translation>
    </message>
    <message>
        <source>; ended {off}</source>
        <translation>; beendet {off}</translation>
    </message>
    <message>
        <source>; {span} over its plan</source>
        <translation>; {span} über dem Plan</translation>
    </message>
    <message>
        <source>on time</source>
        <translation>pünktlich</translation>
    </message>
    <message>
        <source>{span} late</source>
        <translation>{span} zu spät</translation>
    </message>
    <message>
        <source>{span} early</source>
        <translation>{span} zu früh</translation>
    </message>
    <message>
        <source>Ready {at}.</source>
        <translation>Fertig {at}.</translation>
    </message>
    <message>
        <source>End it</source>
        <translation>Beenden</translation>
    </message>
    <message>
        <source>Begin it</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source> to {at}</source>
        <translation> bis {at}</translation>
    </message>
    <message>
        <source> or later</source>
        <translation> oder später</translation>
    </message>
    <message>
        <source>, best ended {at}</source>
        <translation>, am besten beendet {at}</translation>
    </message>
    <message>
        <source> No waking moment fits: quiet hours are {words}.</source>
        <translation> Kein wacher Augenblick passt: die Ruhezeit ist {words}.</translation>
    </message>
    <message>
        <source> Moved out of quiet hours ({words}).</source>
        <translation> Aus der Ruhezeit verschoben ({words}).</translation>
    </message>
    <message>
        <source>{done} {n} time</source>
        <translation>{done} {n}-mal</translation>
    </message>
    <message>
        <source>{done} {n} times</source>
        <translation>{done} {n}-mal</translation>
    </message>
    <message>
        <source>, last {at}</source>
        <translation>, zuletzt {at}</translation>
    </message>
    <message>
        <source> (overdue)</source>
        <translation> (überfällig)</translation>
    </message>
    <message>
        <source>{done}; {lower} next {at}{overdue}.</source>
        <translation>{done}; {lower} als Nächstes {at}{overdue}.</translation>
    </message>
    <message>
        <source>{limit}: passed by {span}.</source>
        <translation>{limit}: um {span} überschritten.</translation>
    </message>
    <message>
        <source>If it waits: {if_late}</source>
        <translation>Wenn es wartet: {if_late}</translation>
    </message>
    <message>
        <source>Next: {title}, {at}.</source>
        <translation>Als Nächstes: {title}, {at}.</translation>
    </message>
    <message>
        <source>in {span}</source>
        <translation>in {span}</translation>
    </message>
    <message>
        <source>up to {last}</source>
        <translation>bis {last}</translation>
    </message>
    <message>
        <source>{ends}, aim {span}</source>
        <translation>{ends}, Ziel {span}</translation>
    </message>
    <message>
        <source>Look ahead by up to ten years, as in 24h or 90d.</source>
        <translation>Höchstens zehn Jahre vorausschauen, etwa 24h oder 90d.</translation>
    </message>
    <message>
        <source>No quiet hours are set.</source>
        <translation>Keine Ruhezeit ist eingestellt.</translation>
    </message>
    <message>
        <source>Quiet hours {hours}: nothing rings.</source>
        <translation>Ruhezeit {hours}: nichts klingelt.</translation>
    </message>
    <message>
        <source>Nothing is waiting. A new lot begins with “New lot”.</source>
        <translation>Nichts wartet. Eine neue Partie beginnt mit „Neue Partie“.</translation>
    </message>
    <message>
        <source>Next: {when}, {title}.</source>
        <translation>Als Nächstes: {when}, {title}.</translation>
    </message>
    <message>
        <source>Nothing until {when}: {title}.</source>
        <translation>Nichts bis {when}: {title}.</translation>
    </message>
    <message>
        <source>due {moment}</source>
        <translation>fällig {moment}</translation>
    </message>
    <message>
        <source>The limit {verb} {limit}. {if_late}</source>
        <translation>Die Grenze {verb} {limit}. {if_late}</translation>
    </message>
    <message>
        <source>Do not disturb lasts from a minute to a day. Nothing was changed.</source>
        <translation>„Nicht stören“ dauert von einer Minute bis zu einem Tag. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Reminders may ring.</source>
        <translation>Erinnerungen dürfen klingeln.</translation>
    </message>
    <message>
        <source>Only what spoils rings</source>
        <translation>Nur was verdirbt, klingelt</translation>
    </message>
    <message>
        <source>Nothing rings</source>
        <translation>Nichts klingelt</translation>
    </message>
    <message>
        <source>{but} until {moment}; then all that is due is told.</source>
        <translation>{but} bis {moment}; dann wird alles Fällige gemeldet.</translation>
    </message>
    <message>
        <source>What to start tonight</source>
        <translation>Was heute Abend zu beginnen ist</translation>
    </message>
    <message>
        <source>Copies of the studio</source>
        <translation>Kopien der Werkstatt</translation>
    </message>
    <message>
        <source>wants refreshing</source>
        <translation>will aufgefrischt werden</translation>
    </message>
    <message>
        <source>use it up, skim or simmer it</source>
        <translation>aufbrauchen, abschöpfen oder aufkochen</translation>
    </message>
    <message>
        <source>Read</source>
        <translation>Abgelesen</translation>
    </message>
    <message>
        <source>Fed</source>
        <translation>Gefüttert</translation>
    </message>
    <message>
        <source>Refreshed</source>
        <translation>Aufgefrischt</translation>
    </message>
    <message>
        <source>Made ready</source>
        <translation>Bereitgemacht</translation>
    </message>
    <message>
        <source>Changed</source>
        <translation>Geändert</translation>
    </message>
    <message>
        <source>Baths: {baths}.</source>
        <translation>Bäder: {baths}.</translation>
    </message>
    <message>
        <source>make it ready now</source>
        <translation>jetzt bereitmachen</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>finished</source>
        <translation>zu Ende</translation>
    </message>
    <message>
        <source>planned {at}</source>
        <translation>geplant {at}</translation>
    </message>
    <message>
        <source>next: the fresh bath</source>
        <translation>als Nächstes: das frische Bad</translation>
    </message>
    <message>
        <source>next: exhaust {number}</source>
        <translation>als Nächstes: Nachzug {number}</translation>
    </message>
    <message>
        <source>the fresh bath</source>
        <translation>das frische Bad</translation>
    </message>
    <message>
        <source>exhaust {number}</source>
        <translation>Nachzug {number}</translation>
    </message>
    <message>
        <source>nothing through yet</source>
        <translation>noch nichts hindurch</translation>
    </message>
    <message>
        <source>{mass} through</source>
        <translation>{mass} hindurch</translation>
    </message>
    <message>
        <source>{mass} of {most} through</source>
        <translation>{mass} von {most} hindurch</translation>
    </message>
    <message>
        <source>{read} ({at})</source>
        <translation>{read} ({at})</translation>
    </message>
    <message>
        <source>liquid: {said}</source>
        <translation>Flüssigkeit: {said}</translation>
    </message>
    <message>
        <source>flower: {said}</source>
        <translation>Blume: {said}</translation>
    </message>
    <message>
        <source>, {place}</source>
        <translation>, {place}</translation>
    </message>
    <message>
        <source>{litres}{where}, made {made}.</source>
        <translation>{litres}{where}, angesetzt {made}.</translation>
    </message>
    <message>
        <source>Refreshed last {since}.</source>
        <translation>Zuletzt aufgefrischt {since}.</translation>
    </message>
    <message>
        <source> It has been made ready.</source>
        <translation> Es ist bereitgemacht.</translation>
    </message>
    <message>
        <source>Likely good until {by} (common practice).</source>
        <translation>Wohl gut bis {by} (verbreitete Praxis).</translation>
    </message>
    <message>
        <source>No cloth has gone through it yet.</source>
        <translation>Noch ist kein Stoff hindurchgegangen.</translation>
    </message>
    <message>
        <source>{n} use</source>
        <translation>{n} Einsatz</translation>
    </message>
    <message>
        <source>{n} uses</source>
        <translation>{n} Einsätzen</translation>
    </message>
    <message>
        <source>{mass} of cloth in {uses}.</source>
        <translation>{mass} Stoff in {uses}.</translation>
    </message>
    <message>
        <source>The next one has {which}.</source>
        <translation>Der nächste bekommt: {which}.</translation>
    </message>
    <message>
        <source>Made anew after {uses} uses (common practice); {done} so far.</source>
        <translation>Nach {uses} Einsätzen neu angesetzt (verbreitete Praxis); bisher {done}.</translation>
    </message>
    <message>
        <source>the studio’s own figure</source>
        <translation>eigene Zahl der Werkstatt</translation>
    </message>
    <message>
        <source>Refreshed after {mass} of cloth ({own}); {since} since it was fresh.</source>
        <translation>Aufgefrischt nach {mass} Stoff ({own}); {since}, seit es frisch war.</translation>
    </message>
    <message>
        <source>{limits}: {why} (common practice).</source>
        <translation>{limits}: {why} (verbreitete Praxis).</translation>
    </message>
    <message>
        <source>{low} and over</source>
        <translation>{low} und mehr</translation>
    </message>
    <message>
        <source>Up to {high}</source>
        <translation>Bis {high}</translation>
    </message>
    <message>
        <source>Made, {litres}</source>
        <translation>Angesetzt, {litres}</translation>
    </message>
    <message>
        <source>cloth of no lot</source>
        <translation>Stoff ohne Partie</translation>
    </message>
    <message>
        <source>, step {step}</source>
        <translation>, Schritt {step}</translation>
    </message>
    <message>
        <source>{mass} through: {lots}{step}</source>
        <translation>{mass} hindurch: {lots}{step}</translation>
    </message>
    <message>
        <source>Dip: {lots}</source>
        <translation>Tauchgang: {lots}</translation>
    </message>
    <message>
        <source>Dip {nth}: {lots}</source>
        <translation>Tauchgang {nth}: {lots}</translation>
    </message>
    <message>
        <source>, {span} in</source>
        <translation>, {span} darin</translation>
    </message>
    <message>
        <source>, aired {span}</source>
        <translation>, {span} gelüftet</translation>
    </message>
    <message>
        <source>Plan withdrawn</source>
        <translation>Plan zurückgezogen</translation>
    </message>
    <message>
        <source>Use planned for {at}</source>
        <translation>Einsatz geplant für {at}</translation>
    </message>
    <message>
        <source>Milk {code} is recorded, good for a further coat until {good}.</source>
        <translation>Milch {code} ist aufgeschrieben, gut für einen weiteren Auftrag bis {good}.</translation>
    </message>
    <message>
        <source>{value} is no figure for a milk&apos;s {replace}.</source>
        <translation>{value} ist keine Angabe für {replace} einer Milch.</translation>
    </message>
    <message>
        <source>Milk is kept between 0 and {most} °C, not at {celsius}. Nothing was changed.</source>
        <translation>Milch wird zwischen 0 und {most} °C aufbewahrt, nicht bei {celsius}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the milk changed</source>
        <translation>die Milch wurde geändert</translation>
    </message>
    <message>
        <source>Nothing of milk {code} is left to take back. Nothing was changed.</source>
        <translation>Von Milch {code} ist nichts mehr zurückzunehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Milk {code} was changed since. Take that back first.</source>
        <translation>Milch {code} wurde seither geändert. Erst das zurücknehmen.</translation>
    </message>
    <message>
        <source>its milk was taken back</source>
        <translation>ihre Milch wurde zurückgenommen</translation>
    </message>
    <message>
        <source>Milk {code}: {words} is taken back.</source>
        <translation>Milch {code}: „{words}“ ist zurückgenommen.</translation>
    </message>
    <message>
        <source>Say what changes: its place, its lots, or that it is used up.</source>
        <translation>Angeben, was sich ändert: der Ort, die Partien, oder dass sie aufgebraucht ist.</translation>
    </message>
    <message>
        <source>Milk {code} is changed.</source>
        <translation>Milch {code} ist geändert.</translation>
    </message>
    <message>
        <source>to begin</source>
        <translation>zu beginnen</translation>
    </message>
    <message>
        <source>tending</source>
        <translation>zu bewegen</translation>
    </message>
    <message>
        <source>may end</source>
        <translation>darf enden</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>so weit</translation>
    </message>
    <message>
        <source>planned</source>
        <translation>geplant</translation>
    </message>
    <message>
        <source>in work</source>
        <translation>in Arbeit</translation>
    </message>
    <message>
        <source>curing</source>
        <translation>in Reife</translation>
    </message>
    <message>
        <source>used</source>
        <translation>verwendet</translation>
    </message>
    <message>
        <source>dipped</source>
        <translation>getaucht</translation>
    </message>
    <message>
        <source>fed</source>
        <translation>gefüttert</translation>
    </message>
    <message>
        <source>refreshed</source>
        <translation>aufgefrischt</translation>
    </message>
    <message>
        <source>made ready</source>
        <translation>bereitgemacht</translation>
    </message>
    <message>
        <source>planned anew</source>
        <translation>neu geplant</translation>
    </message>
    <message>
        <source>{code}: cloth went through, {at}.</source>
        <translation>{code}: Stoff ging hindurch, {at}.</translation>
    </message>
    <message>
        <source>{code}: a dip, {at}.</source>
        <translation>{code}: ein Tauchgang, {at}.</translation>
    </message>
    <message>
        <source>{code}: read, {at}.</source>
        <translation>{code}: abgelesen, {at}.</translation>
    </message>
    <message>
        <source>{code}: fed, {at}.</source>
        <translation>{code}: gefüttert, {at}.</translation>
    </message>
    <message>
        <source>{code}: refreshed, {at}.</source>
        <translation>{code}: aufgefrischt, {at}.</translation>
    </message>
    <message>
        <source>{code}: made ready, {at}.</source>
        <translation>{code}: bereitgemacht, {at}.</translation>
    </message>
    <message>
        <source>{code}: its next use is planned for {at}.</source>
        <translation>{code}: der nächste Einsatz ist geplant für {at}.</translation>
    </message>
    <message>
        <source>{code}: a remark, {at}.</source>
        <translation>{code}: eine Bemerkung, {at}.</translation>
    </message>
    <message>
        <source>There is no kind of bath {kind}. Nothing was made; there are: {kinds}.</source>
        <translation>Eine Art von Bad {kind} gibt es nicht. Nichts wurde angelegt; es gibt: {kinds}.</translation>
    </message>
    <message>
        <source>The place</source>
        <translation>Der Platz</translation>
    </message>
    <message>
        <source>Bath {code}, {title}, is recorded.</source>
        <translation>Bad {code}, {title}, ist aufgeschrieben.</translation>
    </message>
    <message>
        <source>Say what changes: name, place, litres, its limit, or that it is finished.</source>
        <translation>Sagen, was sich ändert: Name, Platz, Liter, seine Grenze oder dass es zu Ende ist.</translation>
    </message>
    <message>
        <source>Bath {code} is finished.</source>
        <translation>Bad {code} ist zu Ende.</translation>
    </message>
    <message>
        <source>Bath {code} is changed.</source>
        <translation>Bad {code} ist geändert.</translation>
    </message>
    <message>
        <source>{code}: no use is planned any more.</source>
        <translation>{code}: kein Einsatz ist mehr geplant.</translation>
    </message>
    <message>
        <source>It wants refreshing now. {do}</source>
        <translation>Es will jetzt aufgefrischt werden. {do}</translation>
    </message>
    <message>
        <source>It wants refreshing now.</source>
        <translation>Es will jetzt aufgefrischt werden.</translation>
    </message>
    <message>
        <source>{figure} is below {limit}: {why} (common practice).</source>
        <translation>{figure} liegt unter {limit}: {why} (verbreitete Praxis).</translation>
    </message>
    <message>
        <source>{figure} is above {limit}: {why} (common practice).</source>
        <translation>{figure} liegt über {limit}: {why} (verbreitete Praxis).</translation>
    </message>
    <message>
        <source>{value} is no {name} of a bath: from {low} to {high}. Nothing was changed.</source>
        <translation>{value} ist für ein Bad kein Wert von {name}: von {low} bis {high}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Say what was read: pH, heat, colour or flower. Nothing was changed.</source>
        <translation>Sagen, was abgelesen wurde: pH, Wärme, Farbe oder Blume. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Say what the bath was fed. Nothing was changed.</source>
        <translation>Sagen, womit das Bad gefüttert wurde. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The note is empty. Nothing was changed.</source>
        <translation>Die Notiz ist leer. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A step belongs to one lot: name that lot alone. Nothing was changed.</source>
        <translation>Ein Schritt gehört zu einer Partie: nur diese nennen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Fifty lots at once at most. Nothing was changed.</source>
        <translation>Höchstens fünfzig Partien auf einmal. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Say how much cloth went through: its weight, or a lot whose weight is known. Nothing was changed.</source>
        <translation>Sagen, wie viel Stoff hindurchging: sein Gewicht oder eine Partie, deren Gewicht bekannt ist. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A dip or an airing lasts up to two days. Nothing was changed.</source>
        <translation>Ein Tauchgang oder ein Lüften dauert bis zu zwei Tage. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Twenty things at once at most. Nothing was changed.</source>
        <translation>Höchstens zwanzig Dinge auf einmal. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>What was fed</source>
        <translation>Das Futter</translation>
    </message>
    <message>
        <source>Plan a use that is still ahead, within ten years. Nothing was changed.</source>
        <translation>Einen Einsatz planen, der noch bevorsteht, innerhalb von zehn Jahren. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The name</source>
        <translation>Der Name</translation>
    </message>
    <message>
        <source>A bath has more than nothing and up to 5,000 L. Nothing was changed.</source>
        <translation>Ein Bad hat mehr als nichts und bis zu 5000 L. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Cloth weighs more than nothing and up to 500 kg. Nothing was changed.</source>
        <translation>Stoff wiegt mehr als nichts und bis zu 500 kg. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>abgebrochen</translation>
    </message>
    <message>
        <source>{n} d</source>
        <translation>{n} Tage</translation>
    </message>
    <message>
        <source>Taken back</source>
        <translation>Zurückgenommen</translation>
    </message>
    <message>
        <source>Joined into {lot}</source>
        <translation>Vereinigt in {lot}</translation>
    </message>
    <message>
        <source>Stopped</source>
        <translation>Abgebrochen</translation>
    </message>
    <message>
        <source>Used {when}</source>
        <translation>Verwendet {when}</translation>
    </message>
    <message>
        <source>Used {when}, cured {n} d</source>
        <translation>Verwendet {when}, {n} Tage gereift</translation>
    </message>
    <message>
        <source>Next: {step}</source>
        <translation>Als Nächstes: {step}</translation>
    </message>
    <message>
        <source>Every step is done</source>
        <translation>Alle Schritte sind getan</translation>
    </message>
    <message>
        <source>{ready} · day {n}</source>
        <translation>{ready} · Tag {n}</translation>
    </message>
    <message>
        <source>Curing · day {n} of {of}</source>
        <translation>In Reife · Tag {n} von {of}</translation>
    </message>
    <message>
        <source>Drying</source>
        <translation>Trocknet</translation>
    </message>
    <message>
        <source>Spinning out</source>
        <translation>Schleudern</translation>
    </message>
    <message>
        <source>Dip</source>
        <translation>Tauchen</translation>
    </message>
    <message>
        <source>{work} · coat {n} of {of}</source>
        <translation>{work} · Auftrag {n} von {of}</translation>
    </message>
    <message>
        <source>{work} · {span} in</source>
        <translation>{work} · seit {span}</translation>
    </message>
    <message>
        <source>stir</source>
        <translation>rühren</translation>
    </message>
    <message>
        <source>dry?</source>
        <translation>trocken?</translation>
    </message>
    <message>
        <source>begin</source>
        <translation>beginnen</translation>
    </message>
    <message>
        <source>end</source>
        <translation>beenden</translation>
    </message>
    <message>
        <source>last call</source>
        <translation>letzter Aufruf</translation>
    </message>
    <message>
        <source>too late since</source>
        <translation>zu spät seit</translation>
    </message>
    <message>
        <source>painting time is over</source>
        <translation>die Malzeit ist vorbei</translation>
    </message>
    <message>
        <source>paint by</source>
        <translation>malen bis</translation>
    </message>
    <message>
        <source>too late:</source>
        <translation>zu spät:</translation>
    </message>
    <message>
        <source>see why</source>
        <translation>siehe warum</translation>
    </message>
    <message>
        <source>past its limit</source>
        <translation>über der Grenze</translation>
    </message>
    <message>
        <source>is it dry?</source>
        <translation>ist es trocken?</translation>
    </message>
    <message>
        <source>use by</source>
        <translation>zu verbrauchen</translation>
    </message>
    <message>
        <source>mark of the cure</source>
        <translation>Marke der Reife</translation>
    </message>
    <message>
        <source>make ready</source>
        <translation>bereitmachen</translation>
    </message>
    <message>
        <source>refresh</source>
        <translation>auffrischen</translation>
    </message>
    <message>
        <source>look ahead</source>
        <translation>Vorschau</translation>
    </message>
    <message>
        <source>evening look</source>
        <translation>Abendvorschau</translation>
    </message>
    <message>
        <source>old copies</source>
        <translation>alte Kopien</translation>
    </message>
    <message>
        <source>the studio</source>
        <translation>die Werkstatt</translation>
    </message>
    <message>
        <source>{times} times</source>
        <translation>{times}-mal</translation>
    </message>
    <message>
        <source>waited for quiet hours to end, {from_due}</source>
        <translation>wartete auf das Ende der Ruhezeit, {from_due}</translation>
    </message>
    <message>
        <source>told {span} late</source>
        <translation>{span} zu spät gemeldet</translation>
    </message>
    <message>
        <source>failed: {channels}</source>
        <translation>fehlgeschlagen: {channels}</translation>
    </message>
    <message>
        <source>told; wanted no answer</source>
        <translation>gemeldet; keine Antwort nötig</translation>
    </message>
    <message>
        <source>, after {span}</source>
        <translation>, nach {span}</translation>
    </message>
    <message>
        <source>answered</source>
        <translation>beantwortet</translation>
    </message>
    <message>
        <source>open: no answer yet</source>
        <translation>offen: noch keine Antwort</translation>
    </message>
    <message>
        <source>rings again</source>
        <translation>klingelt wieder</translation>
    </message>
    <message>
        <source>waits: {rest} {from_due}</source>
        <translation>wartet: {rest} {from_due}</translation>
    </message>
    <message>
        <source>Due {due_words} ({tame}, {tame2}).</source>
        <translation>Fällig {due_words} ({tame}, {tame2}).</translation>
    </message>
    <message>
        <source>did not ring: answered before</source>
        <translation>klingelte nicht: vorher beantwortet</translation>
    </message>
    <message>
        <source>did not ring: {why}</source>
        <translation>klingelte nicht: {why}</translation>
    </message>
    <message>
        <source>did not ring: it came back when an act was taken back</source>
        <translation>klingelte nicht: sie kam zurück, als etwas zurückgenommen wurde</translation>
    </message>
    <message>
        <source>did not ring yet</source>
        <translation>klingelte noch nicht</translation>
    </message>
    <message>
        <source> It was tried, and no channel took it.</source>
        <translation> Es wurde versucht, aber kein Weg nahm sie an.</translation>
    </message>
    <message>
        <source> and {more} times more, last {from_due}</source>
        <translation> und {more}-mal mehr, zuletzt {from_due}</translation>
    </message>
    <message>
        <source> It rang {lost} times more at moments not written down.</source>
        <translation> Sie klingelte {lost}-mal mehr, wann, ist nicht aufgeschrieben.</translation>
    </message>
    <message>
        <source>, by {how_words}</source>
        <translation>, durch {how_words}</translation>
    </message>
    <message>
        <source>Rang {join}{rest}{by}.{untold}</source>
        <translation>Klingelte {join}{rest}{by}.{untold}</translation>
    </message>
    <message>
        <source>It rang before its moment as it stands now: it was planned anew, or put right.</source>
        <translation>Sie klingelte vor dem Zeitpunkt, der jetzt gilt: er wurde neu geplant oder berichtigt.</translation>
    </message>
    <message>
        <source> ({span} after the first ring)</source>
        <translation> ({span} nach dem ersten Klingeln)</translation>
    </message>
    <message>
        <source>Answered {at}{since}: {words}.</source>
        <translation>Beantwortet {at}{since}: {words}.</translation>
    </message>
    <message>
        <source>no words</source>
        <translation>ohne Worte</translation>
    </message>
    <message>
        <source>Every channel that was tried, and what it answered:</source>
        <translation>Jeder Weg, der versucht wurde, und was er antwortete:</translation>
    </message>
    <message>
        <source>… and {rest} more; “Export…” writes them all.</source>
        <translation>… und {rest} weitere; „Ausgeben…“ schreibt alle.</translation>
    </message>
    <message>
        <source>A failure that repeats the one before it is written down once.</source>
        <translation>Ein Fehler, der den vorigen wiederholt, wird einmal aufgeschrieben.</translation>
    </message>
    <message>
        <source>at room heat</source>
        <translation>bei Raumwärme</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>at {celsius} °C</source>
        <translation>bei {celsius} °C</translation>
    </message>
    <message>
        <source>good until</source>
        <translation>gut bis</translation>
    </message>
    <message>
        <source>too old for a further coat since</source>
        <translation>zu alt für einen weiteren Auftrag seit</translation>
    </message>
    <message>
        <source>{code}: {litres}kept {place}, {fresh} {good}</source>
        <translation>{code}: {litres}{place} aufbewahrt, {fresh} {good}</translation>
    </message>
    <message>
        <source>{fault} Until it is right, reminders may come early or late.</source>
        <translation>{fault} Bis sie stimmt, können Erinnerungen zu früh oder zu spät kommen.</translation>
    </message>
    <message>
        <source>Say which lots: give their codes.</source>
        <translation>Angeben, welche Partien: ihre Kürzel.</translation>
    </message>
    <message>
        <source>{code} is a provisional code, given while the server is out of reach. No tag was printed: print it once the lot has its number.</source>
        <translation>{code} ist eine vorläufige Nummer, vergeben, während der Server nicht erreichbar ist. Kein Anhänger wurde gedruckt: drucken, sobald die Partie ihre Nummer hat.</translation>
    </message>
    <message>
        <source>begun {short_day}</source>
        <translation>begonnen {short_day}</translation>
    </message>
    <message>
        <source>Saved {moment}</source>
        <translation>Gespeichert {moment}</translation>
    </message>
    <message>
        <source>Nothing saved yet</source>
        <translation>Noch nichts gespeichert</translation>
    </message>
    <message>
        <source>next ring {moment}</source>
        <translation>nächstes Klingeln {moment}</translation>
    </message>
    <message>
        <source>nothing will ring</source>
        <translation>nichts wird klingeln</translation>
    </message>
    <message>
        <source>ringing now</source>
        <translation>klingelt jetzt</translation>
    </message>
    <message>
        <source>do not disturb until {moment}</source>
        <translation>nicht stören bis {moment}</translation>
    </message>
    <message>
        <source>The studio’s server is out of reach. What is done here is kept, and sent when it answers.</source>
        <translation>Der Server der Werkstatt ist nicht erreichbar. Was hier geschieht, wird aufgehoben und gesendet, sobald er antwortet.</translation>
    </message>
    <message>
        <source>In 10 min</source>
        <translation>In 10 min</translation>
    </message>
    <message>
        <source>Still damp</source>
        <translation>Noch feucht</translation>
    </message>
    <message>
        <source>Seen</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>Begin now</source>
        <translation>Jetzt beginnen</translation>
    </message>
    <message>
        <source>Dry</source>
        <translation>Trocken</translation>
    </message>
    <message>
        <source>… and {rest} more on the bench.</source>
        <translation>… und {rest} weitere auf der Werkbank.</translation>
    </message>
    <message>
        <source>{count} things need hands</source>
        <translation>{count} Dinge brauchen Hände</translation>
    </message>
    <message>
        <source>the window</source>
        <translation>das Fenster</translation>
    </message>
    <message>
        <source>Looking ahead</source>
        <translation>Vorschau</translation>
    </message>
    <message>
        <source>That reminder is not known any more; the bench shows what is open.</source>
        <translation>Diese Erinnerung gibt es nicht mehr; die Werkbank zeigt, was offen ist.</translation>
    </message>
    <message>
        <source>A reminder is not answered by {answer!r}.</source>
        <translation>Eine Erinnerung wird nicht mit {answer!r} beantwortet.</translation>
    </message>
    <message>
        <source>no longer needed</source>
        <translation>nicht mehr nötig</translation>
    </message>
    <message>
        <source>That was answered already: {what}. Nothing was changed.</source>
        <translation>Das wurde schon beantwortet: {what}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{title} is put off.</source>
        <translation>{title} ist aufgeschoben.</translation>
    </message>
    <message>
        <source>The note</source>
        <translation>Die Notiz</translation>
    </message>
    <message>
        <source>Nothing of {code} is left to take back.</source>
        <translation>Von {code} ist nichts mehr zurückzunehmen.</translation>
    </message>
    <message>
        <source>the lot was taken back</source>
        <translation>die Partie wurde zurückgenommen</translation>
    </message>
    <message>
        <source>More of {code} stands on its making. Take that back first. Nothing was changed.</source>
        <translation>Auf dem Ansetzen von {code} steht noch mehr. Erst das zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} is taken back; its code is not used again.</source>
        <translation>{code} ist zurückgenommen; das Kürzel wird nicht wieder benutzt.</translation>
    </message>
    <message>
        <source>{code}: {act} is taken back.</source>
        <translation>{code}: {act} ist zurückgenommen.</translation>
    </message>
    <message>
        <source>its entry was taken back</source>
        <translation>der Eintrag wurde zurückgenommen</translation>
    </message>
    <message>
        <source>{code}: {act} stands again.</source>
        <translation>{code}: {act} gilt wieder.</translation>
    </message>
    <message>
        <source>{code}: {entry_words} is taken back.</source>
        <translation>{code}: „{entry_words}“ ist zurückgenommen.</translation>
    </message>
    <message>
        <source>Entry {number} ({words}) of {code} stands on it. Take that one back first. Nothing was changed.</source>
        <translation>Eintrag {number} ({words}) von {code} baut darauf auf. Erst diesen zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} has been worked on since the split: {count} entries stand on it. Take those back first. Nothing was changed.</source>
        <translation>An {code} wurde seit der Teilung gearbeitet: {count} Einträge bauen darauf auf. Erst diese zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the split was taken back</source>
        <translation>die Teilung wurde zurückgenommen</translation>
    </message>
    <message>
        <source>Entry {number} belongs to the lot&apos;s past and cannot be changed here.</source>
        <translation>Eintrag {number} gehört zur Vergangenheit der Partie und kann hier nicht geändert werden.</translation>
    </message>
    <message>
        <source>There is no entry {number} that stands. Nothing was changed.</source>
        <translation>Es gibt keinen gültigen Eintrag {number}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A split that was taken back is made again, not restored.</source>
        <translation>Eine zurückgenommene Teilung wird neu gemacht, nicht wiederhergestellt.</translation>
    </message>
    <message>
        <source>A join that was taken back is made again, not restored.</source>
        <translation>Eine zurückgenommene Vereinigung wird neu gemacht, nicht wiederhergestellt.</translation>
    </message>
    <message>
        <source>{code} was joined into {child}, which has entry {number} too. Take the join back first. Nothing was changed.</source>
        <translation>{code} wurde mit anderen zu {child} vereinigt, und dort steht Eintrag {number} auch. Zuerst die Vereinigung zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} is restored.</source>
        <translation>{code} ist wiederhergestellt.</translation>
    </message>
    <message>
        <source>Nothing of {code} was taken back. Nothing was changed.</source>
        <translation>Von {code} war nichts zurückgenommen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code}: {entry_words} stands again.</source>
        <translation>{code}: „{entry_words}“ gilt wieder.</translation>
    </message>
    <message>
        <source>its entry was restored</source>
        <translation>der Eintrag wurde wiederhergestellt</translation>
    </message>
    <message>
        <source>When a lot was made is not corrected. Nothing was changed.</source>
        <translation>Wann eine Partie angelegt wurde, wird nicht berichtigt. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>When a lot was joined is not corrected. Nothing was changed.</source>
        <translation>Wann eine Partie vereinigt wurde, wird nicht berichtigt. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Say what is to be corrected: --at, --note or --reading.</source>
        <translation>Angeben, was zu berichtigen ist: --at, --note oder --reading.</translation>
    </message>
    <message>
        <source>an entry was corrected</source>
        <translation>ein Eintrag wurde berichtigt</translation>
    </message>
    <message>
        <source>{code}: entry {number} is corrected.</source>
        <translation>{code}: Eintrag {number} ist berichtigt.</translation>
    </message>
    <message>
        <source>felt dry</source>
        <translation>fühlte sich trocken an</translation>
    </message>
    <message>
        <source>Across the room — Studio Log</source>
        <translation>Quer durch den Raum — Studio Log</translation>
    </message>
    <message>
        <source>The log met a fault of its own, and this was not written down. The log’s own window says more.</source>
        <translation>Das Buch stieß auf einen eigenen Fehler, und dies wurde nicht aufgeschrieben. Das Fenster des Buchs sagt mehr.</translation>
    </message>
    <message>
        <source>Not written down</source>
        <translation>Nicht aufgeschrieben</translation>
    </message>
    <message>
        <source>Is this right?</source>
        <translation>Stimmt das?</translation>
    </message>
    <message>
        <source>Put it off all the same?</source>
        <translation>Trotzdem aufschieben?</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source> — U takes it back</source>
        <translation> — U nimmt es zurück</translation>
    </message>
    <message>
        <source>Yes</source>
        <translation>Ja</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Space again says yes · Esc says no</source>
        <translation>Noch einmal Leertaste heißt ja · Esc heißt nein</translation>
    </message>
    <message>
        <source>Space goes back to what is waiting</source>
        <translation>Leertaste geht zurück zu dem, was wartet</translation>
    </message>
    <message>
        <source>Esc leaves</source>
        <translation>Esc verlässt die Ansicht</translation>
    </message>
    <message>
        <source>Later: 1 in 10 min, 2 in 30 min, M next morning</source>
        <translation>Später: 1 in 10 min, 2 in 30 min, M am nächsten Morgen</translation>
    </message>
    <message>
        <source>Later: 1, 2, M</source>
        <translation>Später: 1, 2, M</translation>
    </message>
    <message>
        <source>U takes {take_back} back</source>
        <translation>U nimmt {take_back} zurück</translation>
    </message>
    <message>
        <source>W lets the screen rest</source>
        <translation>W lässt den Bildschirm ruhen</translation>
    </message>
    <message>
        <source>W keeps the screen on</source>
        <translation>W hält den Bildschirm an</translation>
    </message>
    <message>
        <source>U takes back</source>
        <translation>U nimmt zurück</translation>
    </message>
    <message>
        <source>Nothing is waiting.</source>
        <translation>Nichts wartet.</translation>
    </message>
    <message>
        <source>One moment …</source>
        <translation>Einen Augenblick …</translation>
    </message>
    <message>
        <source>A new lot is begun in the log’s own window.</source>
        <translation>Eine neue Partie beginnt im Fenster des Buchs.</translation>
    </message>
    <message>
        <source>Running</source>
        <translation>Läuft</translation>
    </message>
    <message>
        <source>quiet hours until {at}</source>
        <translation>Ruhezeit bis {at}</translation>
    </message>
    <message>
        <source>{second}: {lot} at {at}; it asks again</source>
        <translation>{second}: {lot} um {at}; es fragt wieder</translation>
    </message>
    <message>
        <source>Put off: {act}</source>
        <translation>Aufgeschoben: {act}</translation>
    </message>
    <message>
        <source>The supplier’s safety data sheet and local rules come first; this paper does not replace them.</source>
        <translation>Das Sicherheitsdatenblatt des Lieferanten und die örtlichen Regeln gehen vor; dieses Papier ersetzt sie nicht.</translation>
    </message>
    <message>
        <source>Step card</source>
        <translation>Schrittkarte</translation>
    </message>
    <message>
        <source>Begun</source>
        <translation>Begonnen</translation>
    </message>
    <message>
        <source>Ended</source>
        <translation>Beendet</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>(month/day)</source>
        <translation>(Monat/Tag)</translation>
    </message>
    <message>
        <source>(day/month)</source>
        <translation>(Tag/Monat)</translation>
    </message>
    <message>
        <source>if you choose to</source>
        <translation>wenn gewünscht</translation>
    </message>
    <message>
        <source>ready {moment}</source>
        <translation>fertig {moment}</translation>
    </message>
    <message>
        <source>end {moment}</source>
        <translation>enden {moment}</translation>
    </message>
    <message>
        <source>begin {moment}</source>
        <translation>beginnen {moment}</translation>
    </message>
    <message>
        <source>latest {moment}</source>
        <translation>spätestens {moment}</translation>
    </message>
    <message>
        <source>Tonight and in the morning</source>
        <translation>Heute Nacht und am Morgen</translation>
    </message>
    <message>
        <source>Nothing is due.</source>
        <translation>Nichts ist fällig.</translation>
    </message>
    <message>
        <source>Day sheet, {day}</source>
        <translation>Tagesblatt, {day}</translation>
    </message>
    <message>
        <source>Done at</source>
        <translation>Getan um</translation>
    </message>
    <message>
        <source>Start now</source>
        <translation>Jetzt beginnen</translation>
    </message>
    <message>
        <source>{done} {lot} at {at}</source>
        <translation>{done} {lot} um {at}</translation>
    </message>
    <message>
        <source>Nothing until {when}</source>
        <translation>Nichts bis {when}</translation>
    </message>
    <message>
        <source>do not disturb until {at}</source>
        <translation>nicht stören bis {at}</translation>
    </message>
    <message>
        <source>screen kept awake</source>
        <translation>Bildschirm bleibt an</translation>
    </message>
    <message>
        <source>chime off</source>
        <translation>Klang aus</translation>
    </message>
    <message>
        <source>chime silent: its volume is 0</source>
        <translation>Klang stumm: die Lautstärke ist 0</translation>
    </message>
    <message>
        <source>chime on, {chime_volume} %</source>
        <translation>Klang an, {chime_volume} %</translation>
    </message>
    <message>
        <source>And {hidden} more · {keys}</source>
        <translation>Und {hidden} weitere · {keys}</translation>
    </message>
    <message>
        <source>The screen cannot be kept on from here. Its rest is set in the system’s settings.</source>
        <translation>Der Bildschirm kann von hier nicht angehalten werden. Seine Ruhe wird in den Einstellungen des Systems geregelt.</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Lot</source>
        <translation>&amp;Partie</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>&amp;Reminders</source>
        <translation>&amp;Erinnerungen</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;New lot…</source>
        <translation>&amp;Neue Partie…</translation>
    </message>
    <message>
        <source>&amp;Print tags…</source>
        <translation>Etiketten d&amp;rucken…</translation>
    </message>
    <message>
        <source>Print the step ca&amp;rd…</source>
        <translation>Schrittkar&amp;te drucken…</translation>
    </message>
    <message>
        <source>Print the &amp;whole record…</source>
        <translation>&amp;Ganze Akte drucken…</translation>
    </message>
    <message>
        <source>Print the &amp;day sheet…</source>
        <translation>Tagesb&amp;latt drucken…</translation>
    </message>
    <message>
        <source>Ca&amp;lendar…</source>
        <translation>Kalen&amp;der …</translation>
    </message>
    <message>
        <source>Take &amp;in an old notebook…</source>
        <translation>Altes &amp;Heft übernehmen…</translation>
    </message>
    <message>
        <source>&amp;Export everything…</source>
        <translation>&amp;Alles ausgeben…</translation>
    </message>
    <message>
        <source>C&amp;opies…</source>
        <translation>Ko&amp;pien …</translation>
    </message>
    <message>
        <source>Se&amp;veral laptops…</source>
        <translation>&amp;Mehrere Rechner …</translation>
    </message>
    <message>
        <source>&amp;Settings…</source>
        <translation>&amp;Einstellungen…</translation>
    </message>
    <message>
        <source>&amp;Hours…</source>
        <translation>Ze&amp;iten…</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>S&amp;plit…</source>
        <translation>&amp;Teilen…</translation>
    </message>
    <message>
        <source>&amp;Join with another lot…</source>
        <translation>Mit einer anderen Partie &amp;vereinigen…</translation>
    </message>
    <message>
        <source>&amp;Go on to a method…</source>
        <translation>Mit einer &amp;Methode weiter…</translation>
    </message>
    <message>
        <source>&amp;Name, place, weight, cure…</source>
        <translation>&amp;Name, Ort, Gewicht, Reife…</translation>
    </message>
    <message>
        <source>Record the &amp;milk…</source>
        <translation>M&amp;ilch aufschreiben…</translation>
    </message>
    <message>
        <source>Times from the car&amp;d…</source>
        <translation>&amp;Zeiten von der Karte…</translation>
    </message>
    <message>
        <source>S&amp;top this lot…</source>
        <translation>Partie &amp;abbrechen…</translation>
    </message>
    <message>
        <source>&amp;Find a lot</source>
        <translation>Partie &amp;suchen</translation>
    </message>
    <message>
        <source>Go to the &amp;lots</source>
        <translation>Zu den &amp;Partien</translation>
    </message>
    <message>
        <source>Go to the s&amp;teps</source>
        <translation>Zu den S&amp;chritten</translation>
    </message>
    <message>
        <source>Go to the &amp;bench</source>
        <translation>Zur &amp;Werkbank</translation>
    </message>
    <message>
        <source>&amp;Methods…</source>
        <translation>&amp;Methoden…</translation>
    </message>
    <message>
        <source>&amp;Calculator…</source>
        <translation>Rec&amp;hner…</translation>
    </message>
    <message>
        <source>Stoc&amp;k…</source>
        <translation>V&amp;orrat…</translation>
    </message>
    <message>
        <source>Baths and &amp;vats…</source>
        <translation>Bäder und Küp&amp;en …</translation>
    </message>
    <message>
        <source>D&amp;yes and materials…</source>
        <translation>Farben &amp;und Stoffe…</translation>
    </message>
    <message>
        <source>S&amp;watches…</source>
        <translation>&amp;Farbproben…</translation>
    </message>
    <message>
        <source>Tr&amp;ials…</source>
        <translation>&amp;Versuche…</translation>
    </message>
    <message>
        <source>&amp;Plan…</source>
        <translation>Pl&amp;an…</translation>
    </message>
    <message>
        <source>&amp;Across the room</source>
        <translation>&amp;Quer durch den Raum</translation>
    </message>
    <message>
        <source>L&amp;arger text</source>
        <translation>&amp;Größere Schrift</translation>
    </message>
    <message>
        <source>S&amp;maller text</source>
        <translation>&amp;Kleinere Schrift</translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation>&amp;Dunkel</translation>
    </message>
    <message>
        <source>&amp;Answer what rings (Space)</source>
        <translation>&amp;Beantworten, was klingelt (Leertaste)</translation>
    </message>
    <message>
        <source>&amp;Put everything off 10 min</source>
        <translation>&amp;Alles um 10 min aufschieben</translation>
    </message>
    <message>
        <source>&amp;Take back the last act</source>
        <translation>Letzten Handgriff &amp;zurücknehmen</translation>
    </message>
    <message>
        <source>&amp;What rang…</source>
        <translation>Was &amp;klingelte…</translation>
    </message>
    <message>
        <source>Ring a t&amp;est</source>
        <translation>Klingeln ausp&amp;robieren</translation>
    </message>
    <message>
        <source>&amp;Help pages</source>
        <translation>&amp;Hilfeseiten</translation>
    </message>
    <message>
        <source>&amp;What is new</source>
        <translation>&amp;Was ist neu</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>&amp;About Studio Log</source>
        <translation>Ü&amp;ber Studio Log</translation>
    </message>
    <message>
        <source>Nothing needs hands just now.</source>
        <translation>Gerade braucht nichts Hände.</translation>
    </message>
    <message>
        <source>Nothing to take back</source>
        <translation>Nichts zurückzunehmen</translation>
    </message>
    <message>
        <source>Later today</source>
        <translation>Später heute</translation>
    </message>
    <message>
        <source>Tonight and tomorrow morning</source>
        <translation>Heute Nacht und morgen früh</translation>
    </message>
    <message>
        <source>Further on</source>
        <translation>Weiter voraus</translation>
    </message>
    <message>
        <source>At the bench</source>
        <translation>Auf der Werkbank</translation>
    </message>
    <message>
        <source>{count} due</source>
        <translation>{count} fällig</translation>
    </message>
    <message>
        <source>nothing due</source>
        <translation>nichts fällig</translation>
    </message>
    <message>
        <source>{due} · {today} later today</source>
        <translation>{due} · {today} später heute</translation>
    </message>
    <message>
        <source>No bath is kept yet. A chalk bath, a mordant, an indigo vat or a dye bath with its exhausts: each gets a diary, counts the cloth that went through it, and says when it wants refreshing. Begin with “New bath”.</source>
        <translation>Noch wird kein Bad geführt. Ein Kreidebad, eine Beize, eine Indigoküpe oder ein Farbbad mit seinen Nachzügen: jedes bekommt ein Tagebuch, zählt den Stoff, der hindurchging, und sagt, wann es aufgefrischt werden will. Mit „Neues Bad“ beginnen.</translation>
    </message>
    <message>
        <source>Baths and vats — Studio Log</source>
        <translation>Bäder und Küpen — Studio Log</translation>
    </message>
    <message>
        <source>Baths and vats</source>
        <translation>Bäder und Küpen</translation>
    </message>
    <message>
        <source>Finished t&amp;oo</source>
        <translation>Auch be&amp;endete</translation>
    </message>
    <message>
        <source>Red&amp;o</source>
        <translation>&amp;Wiederherstellen</translation>
    </message>
    <message>
        <source>The chosen bath</source>
        <translation>Das gewählte Bad</translation>
    </message>
    <message>
        <source>Take back: {words}</source>
        <translation>Zurücknehmen: {words}</translation>
    </message>
    <message>
        <source>Restore: {words}</source>
        <translation>Wiederherstellen: {words}</translation>
    </message>
    <message>
        <source>{lot}: {answer}, at what time?</source>
        <translation>{lot}: {answer}, um welche Zeit?</translation>
    </message>
    <message>
        <source>{lot}: skip “{title}”</source>
        <translation>{lot}: „{title}“ auslassen</translation>
    </message>
    <message>
        <source>Why is it skipped?</source>
        <translation>Warum wird er ausgelassen?</translation>
    </message>
    <message>
        <source>10 min</source>
        <translation>10 min</translation>
    </message>
    <message>
        <source>30 min</source>
        <translation>30 min</translation>
    </message>
    <message>
        <source>Next morning</source>
        <translation>Nächster Morgen</translation>
    </message>
    <message>
        <source>Put off</source>
        <translation>Aufschieben</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
    <message>
        <source>If put off: {warning}</source>
        <translation>Wenn aufgeschoben: {warning}</translation>
    </message>
    <message>
        <source>Put off: {named}</source>
        <translation>Aufschieben: {named}</translation>
    </message>
    <message>
        <source>More answers: {named}</source>
        <translation>Mehr Antworten: {named}</translation>
    </message>
    <message>
        <source>Done at a stated &amp;time…</source>
        <translation>&amp;Erledigt um diese Zeit…</translation>
    </message>
    <message>
        <source>&amp;Skip with a reason…</source>
        <translation>Mit Begründung &amp;auslassen…</translation>
    </message>
    <message>
        <source>&amp;Open the lot</source>
        <translation>Partie ö&amp;ffnen</translation>
    </message>
    <message>
        <source>Put off 10 min</source>
        <translation>10 min aufschieben</translation>
    </message>
    <message>
        <source>Ring a test</source>
        <translation>Klingeln ausprobieren</translation>
    </message>
    <message>
        <source>Hide</source>
        <translation>Verbergen</translation>
    </message>
    <message>
        <source>Hide this until it changes</source>
        <translation>Verbergen, bis sich etwas ändert</translation>
    </message>
    <message>
        <source>{others} more on the bench.</source>
        <translation>{others} weitere auf der Werkbank.</translation>
    </message>
    <message>
        <source>Put off 10 minutes: {named}</source>
        <translation>10 Minuten aufschieben: {named}</translation>
    </message>
    <message>
        <source>Rings: {named}</source>
        <translation>Klingelt: {named}</translation>
    </message>
    <message>
        <source>Closing the window keeps the reminders going; the icon in the tray opens it again. Ctrl+Q quits, and then nothing rings until Studio Log is started again.</source>
        <translation>Wird das Fenster geschlossen, erinnert das Programm weiter; das Zeichen in der Leiste öffnet es wieder. Strg+Q beendet es, und dann klingelt nichts, bis Studio Log wieder gestartet wird.</translation>
    </message>
    <message>
        <source>This desktop has no tray, so closing makes the window small instead, and the reminders keep going. Ctrl+Q quits, and then nothing rings until Studio Log is started again.</source>
        <translation>Dieser Schreibtisch hat keine Leiste für Zeichen; darum macht Schließen das Fenster klein, und es wird weiter erinnert. Strg+Q beendet es, und dann klingelt nichts, bis Studio Log wieder gestartet wird.</translation>
    </message>
    <message>
        <source>Something in the program itself went wrong. What was confirmed before is kept; the last act may not have been. Try it again. The details can be copied for whoever mends it.</source>
        <translation>Im Programm selbst ging etwas schief. Was vorher bestätigt war, ist erhalten; der letzte Handgriff vielleicht nicht. Noch einmal versuchen. Die Einzelheiten können für den kopiert werden, der es behebt.</translation>
    </message>
    <message>
        <source>&amp;Yes, take it</source>
        <translation>&amp;Ja, so nehmen</translation>
    </message>
    <message>
        <source>&amp;No</source>
        <translation>&amp;Nein</translation>
    </message>
    <message>
        <source>&amp;Copy the details</source>
        <translation>Einzelheiten &amp;kopieren</translation>
    </message>
    <message>
        <source>&amp;Put away</source>
        <translation>&amp;Weglegen</translation>
    </message>
    <message>
        <source>Put this message away</source>
        <translation>Diese Nachricht weglegen</translation>
    </message>
    <message>
        <source>Getting started</source>
        <translation>Erste Schritte</translation>
    </message>
    <message>
        <source>How times may be typed</source>
        <translation>Wie Zeiten getippt werden</translation>
    </message>
    <message>
        <source>The timeline</source>
        <translation>Die Zeitleiste</translation>
    </message>
    <message>
        <source>Reminders</source>
        <translation>Erinnerungen</translation>
    </message>
    <message>
        <source>Reminders without the window</source>
        <translation>Erinnern ohne Fenster</translation>
    </message>
    <message>
        <source>Across the room</source>
        <translation>Quer durch den Raum</translation>
    </message>
    <message>
        <source>Methods</source>
        <translation>Methoden</translation>
    </message>
    <message>
        <source>&amp;Dyes</source>
        <translation>&amp;Farbstoffe</translation>
    </message>
    <message>
        <source>&amp;Materials and safety</source>
        <translation>&amp;Materialien und Sicherheit</translation>
    </message>
    <message>
        <source>&amp;Earthy or bright?</source>
        <translation>&amp;Erdig oder leuchtend?</translation>
    </message>
    <message>
        <source>Materials in this studio: for the wall</source>
        <translation>Materialien in dieser Werkstatt: für die Wand</translation>
    </message>
    <message>
        <source>Dyes and materials — Studio Log</source>
        <translation>Farben und Stoffe — Studio Log</translation>
    </message>
    <message>
        <source>Dyes and materials</source>
        <translation>Farbstoffe und Chemikalien</translation>
    </message>
    <message>
        <source>Fibre of the cloth</source>
        <translation>Faser des Stoffs</translation>
    </message>
    <message>
        <source>What is known</source>
        <translation>Was bekannt ist</translation>
    </message>
    <message>
        <source>Save for the &amp;wall…</source>
        <translation>Für die &amp;Wand speichern…</translation>
    </message>
    <message>
        <source>Nothing is found by these words.</source>
        <translation>Mit diesen Wörtern ist nichts zu finden.</translation>
    </message>
    <message>
        <source>New lot: {way}…</source>
        <translation>Neue Partie: {way}…</translation>
    </message>
    <message>
        <source>Save for the wall</source>
        <translation>Für die Wand speichern</translation>
    </message>
    <message>
        <source>The &amp;cloth</source>
        <translation>Der &amp;Stoff</translation>
    </message>
    <message>
        <source>Find by name</source>
        <translation>Nach Namen suchen</translation>
    </message>
    <message>
        <source>Find a dye or a material</source>
        <translation>Einen Farbstoff oder ein Material suchen</translation>
    </message>
    <message>
        <source>Calculator</source>
        <translation>Rechner</translation>
    </message>
    <message>
        <source>The stock</source>
        <translation>Der Vorrat</translation>
    </message>
    <message>
        <source>Planning</source>
        <translation>Planen</translation>
    </message>
    <message>
        <source>Colour</source>
        <translation>Farbe</translation>
    </message>
    <message>
        <source>Trials</source>
        <translation>Versuche</translation>
    </message>
    <message>
        <source>Calendar and copies</source>
        <translation>Kalender und Kopien</translation>
    </message>
    <message>
        <source>Several laptops</source>
        <translation>Mehrere Rechner</translation>
    </message>
    <message>
        <source>Paper, out and in</source>
        <translation>Papier, hinaus und herein</translation>
    </message>
    <message>
        <source>Safety</source>
        <translation>Sicherheit</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Commands</source>
        <translation>Befehle</translation>
    </message>
    <message>
        <source>Sources of the figures</source>
        <translation>Woher die Zahlen sind</translation>
    </message>
    <message>
        <source>What is new</source>
        <translation>Was ist neu</translation>
    </message>
    <message>
        <source>This page is missing from the installation. Install the program anew.</source>
        <translation>Diese Seite fehlt in der Installation. Das Programm neu installieren.</translation>
    </message>
    <message>
        <source>Help — Studio Log</source>
        <translation>Hilfe — Studio Log</translation>
    </message>
    <message>
        <source>Find on this page</source>
        <translation>Auf dieser Seite suchen</translation>
    </message>
    <message>
        <source>Help pages</source>
        <translation>Hilfeseiten</translation>
    </message>
    <message>
        <source>Help page</source>
        <translation>Hilfeseite</translation>
    </message>
    <message>
        <source>Not on this page.</source>
        <translation>Nicht auf dieser Seite.</translation>
    </message>
    <message>
        <source>Do not &amp;disturb for an hour</source>
        <translation>Eine Stunde lang &amp;nicht stören</translation>
    </message>
    <message>
        <source>Do not disturb until &amp;morning</source>
        <translation>Bis zum &amp;Morgen nicht stören</translation>
    </message>
    <message>
        <source>&amp;Let it ring again</source>
        <translation>Wieder klingeln &amp;lassen</translation>
    </message>
    <message>
        <source>Studio Log — a dyer’s logbook</source>
        <translation>Studio Log — ein Buch für Färber</translation>
    </message>
    <message>
        <source>A logbook with reminders for a natural dyer’s workshop. Every lot’s record, its amounts, what it needs next and by when. It never replaces the supplier’s safety data sheet.</source>
        <translation>Ein Werkstattbuch mit Erinnerungen für die Pflanzenfärberei. Der Verlauf jeder Partie, ihre Mengen, was sie als Nächstes braucht und bis wann. Es ersetzt nie das Sicherheitsdatenblatt des Lieferanten.</translation>
    </message>
    <message>
        <source>The chime in this window is all that can be tried here.</source>
        <translation>Der Klang in diesem Fenster ist alles, was hier ausprobiert werden kann.</translation>
    </message>
    <message>
        <source>Test rung. {said}</source>
        <translation>Probeklingeln. {said}</translation>
    </message>
    <message>
        <source>No channel answered; ringing here only.</source>
        <translation>Kein Weg antwortete; es klingelt nur hier.</translation>
    </message>
    <message>
        <source>Times go by the {zone}.</source>
        <translation>Zeiten richten sich nach: {zone}.</translation>
    </message>
    <message>
        <source>Lots</source>
        <translation>Partien</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>The lot</source>
        <translation>Die Partie</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Werkbank</translation>
    </message>
    <message>
        <source>Go to: {words}</source>
        <translation>Gehe zu: {words}</translation>
    </message>
    <message>
        <source>&amp;Today</source>
        <translation>&amp;Heute</translation>
    </message>
    <message>
        <source>&amp;7 days</source>
        <translation>&amp;7 Tage</translation>
    </message>
    <message>
        <source>&amp;30 days</source>
        <translation>&amp;30 Tage</translation>
    </message>
    <message>
        <source>&amp;90 days</source>
        <translation>&amp;90 Tage</translation>
    </message>
    <message>
        <source>Looking what rang…</source>
        <translation>Es wird nachgesehen, was klingelte…</translation>
    </message>
    <message>
        <source>Nothing rang in these days.</source>
        <translation>In diesen Tagen klingelte nichts.</translation>
    </message>
    <message>
        <source>Nothing found for “{find}” in these days. Try fewer words or more days.</source>
        <translation>Nichts gefunden für „{find}“ in diesen Tagen. Mit weniger Wörtern oder mehr Tagen versuchen.</translation>
    </message>
    <message>
        <source>What rang cannot be shown just now. Close this window and open it again.</source>
        <translation>Was klingelte, kann gerade nicht gezeigt werden. Dieses Fenster schließen und wieder öffnen.</translation>
    </message>
    <message>
        <source>What rang — Studio Log</source>
        <translation>Was klingelte — Studio Log</translation>
    </message>
    <message>
        <source>&amp;Export…</source>
        <translation>&amp;Ausgeben…</translation>
    </message>
    <message>
        <source>Export these rows as CSV</source>
        <translation>Diese Zeilen als CSV ausgeben</translation>
    </message>
    <message>
        <source>&amp;Close</source>
        <translation>S&amp;chließen</translation>
    </message>
    <message>
        <source>Show: {span}</source>
        <translation>Zeigen: {span}</translation>
    </message>
    <message>
        <source>what-rang-{seen_from:%Y-%m-%d}.csv</source>
        <translation>was-klingelte-{seen_from:%Y-%m-%d}.csv</translation>
    </message>
    <message>
        <source>Export what rang</source>
        <translation>Ausgeben, was klingelte</translation>
    </message>
    <message>
        <source>Comma-separated values (*.csv)</source>
        <translation>Durch Kommas getrennte Werte (*.csv)</translation>
    </message>
    <message>
        <source>{counted} Written to {chosen}.</source>
        <translation>{counted} Geschrieben nach {chosen}.</translation>
    </message>
    <message>
        <source>1 reminder.</source>
        <translation>1 Erinnerung.</translation>
    </message>
    <message>
        <source>{count:,} reminders, the latest due first.</source>
        <translation>{count:,} Erinnerungen, die zuletzt fälligen zuerst.</translation>
    </message>
    <message>
        <source>1 waits</source>
        <translation>1 wartet</translation>
    </message>
    <message>
        <source>{left:,} wait</source>
        <translation>{left:,} warten</translation>
    </message>
    <message>
        <source>{count} {waits} for an answer.</source>
        <translation>{count} {waits} auf eine Antwort.</translation>
    </message>
    <message>
        <source>Due</source>
        <translation>Fällig</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Partie</translation>
    </message>
    <message>
        <source>% of the weight of fibre</source>
        <translation>% vom Fasergewicht</translation>
    </message>
    <message>
        <source>litres a kilogram of cloth</source>
        <translation>Liter auf ein Kilogramm Stoff</translation>
    </message>
    <message>
        <source>the same for any weight</source>
        <translation>gleich für jedes Gewicht</translation>
    </message>
    <message>
        <source>grams a square metre of cloth</source>
        <translation>Gramm auf einen Quadratmeter Stoff</translation>
    </message>
    <message>
        <source>grams of it to the litre</source>
        <translation>Gramm davon auf den Liter</translation>
    </message>
    <message>
        <source>times the volume of</source>
        <translation>mal das Volumen von</translation>
    </message>
    <message>
        <source>parts water on one part of</source>
        <translation>Teile Wasser auf einen Teil von</translation>
    </message>
    <message>
        <source>grams in each litre of</source>
        <translation>Gramm in jedem Liter von</translation>
    </message>
    <message>
        <source>times the weight of</source>
        <translation>mal das Gewicht von</translation>
    </message>
    <message>
        <source>common practice, or whose it is</source>
        <translation>allgemeiner Brauch, oder von wem es ist</translation>
    </message>
    <message>
        <source>{lot} was taken back: nothing is cut from it. Nothing was changed.</source>
        <translation>{lot} wurde zurückgenommen: Davon wird nichts abgeschnitten. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{lot} has no piece {piece}: its pieces are {pieces}. Nothing was changed.</source>
        <translation>{lot} hat kein Stück {piece}: Die Stücke sind {pieces}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{lot} was begun later than that. Nothing was changed; look at the time.</source>
        <translation>{lot} wurde erst später begonnen. Nichts wurde geändert; Zeit ansehen.</translation>
    </message>
    <message>
        <source>Swatch {code} is cut from {lot}.</source>
        <translation>Probe {code} ist von {lot} abgeschnitten.</translation>
    </message>
    <message>
        <source>Say what changes: name, place, test half, or that it is kept no longer.</source>
        <translation>Sagen, was sich ändert: Name, Platz, Prüfhälfte oder dass die Probe nicht mehr aufgehoben wird.</translation>
    </message>
    <message>
        <source>Swatch {code} is changed.</source>
        <translation>Probe {code} ist geändert.</translation>
    </message>
    <message>
        <source>source of a colour</source>
        <translation>Herkunft einer Farbe</translation>
    </message>
    <message>
        <source>half of a swatch</source>
        <translation>Hälfte einer Probe</translation>
    </message>
    <message>
        <source>white</source>
        <translation>Weiß</translation>
    </message>
    <message>
        <source>The method</source>
        <translation>Die Methode</translation>
    </message>
    <message>
        <source>A warning</source>
        <translation>Ein Hinweis</translation>
    </message>
    <message>
        <source>{code}: its colour is written down.</source>
        <translation>{code}: Die Farbe ist eingetragen.</translation>
    </message>
    <message>
        <source>No colour was given. Nothing was changed.</source>
        <translation>Es wurde keine Farbe angegeben. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The grain of a photo is 0 or more, in CIEDE2000. Nothing was changed.</source>
        <translation>Das Korn eines Fotos ist 0 oder mehr, in CIEDE2000. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Either every spot has a spectrum or none. Nothing was changed.</source>
        <translation>Entweder hat jede Stelle ein Spektrum oder keine. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>test</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>scale</source>
        <translation>Maßstab</translation>
    </message>
    <message>
        <source>{code}: grade {grade} is written down.</source>
        <translation>{code}: Die Note {grade} ist eingetragen.</translation>
    </message>
    <message>
        <source>A grade is estimated from the colours of both halves: read the master half and the test half first, or give the grade. Nothing was changed.</source>
        <translation>Eine Note wird aus den Farben beider Hälften geschätzt: zuerst Vergleichshälfte und Prüfhälfte messen oder die Note angeben. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Staining is estimated from the colours of the cloth beside it, before the test and after: read both first, or give the grade. Nothing was changed.</source>
        <translation>Das Anbluten wird aus den Farben des Begleitgewebes vor und nach der Prüfung geschätzt: erst beide ablesen, oder die Note angeben. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Only a change of colour and staining can be estimated; give the grade by eye.</source>
        <translation>Nur Farbänderung und Anbluten lassen sich schätzen; die Note nach Augenmaß angeben.</translation>
    </message>
    <message>
        <source>The two colours cannot be held against each other: read both the same way, from a photo with a target or by one instrument. Nothing was changed.</source>
        <translation>Die beiden Farben lassen sich nicht vergleichen: beide auf dieselbe Weise messen, mit Foto und Farbtafel oder mit einem Gerät. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code}: a remark is written down.</source>
        <translation>{code}: Eine Bemerkung ist eingetragen.</translation>
    </message>
    <message>
        <source>{code} was taken back. Nothing was changed.</source>
        <translation>{code} wurde zurückgenommen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} is no reading of a swatch: L, a, b, two_u or grade. Nothing was changed.</source>
        <translation>{name} ist kein Messwert einer Probe: L, a, b, two_u oder grade. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{value} is no 2u: 0 to {most} CIEDE2000. Nothing was changed.</source>
        <translation>{value} ist kein 2u: 0 bis {most} CIEDE2000. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A spectrum has 31 fractions, 400 to 700 nm by 10. Nothing was changed.</source>
        <translation>Ein Spektrum hat 31 Anteile, 400 bis 700 nm in Zehnerschritten. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{given} is no {what}; there are: {known}. Nothing was changed.</source>
        <translation>{given} gehört nicht zu „{what}“; es gibt: {known}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>School of practice</source>
        <translation>Schule</translation>
    </message>
    <message>
        <source>Version</source>
        <translation>Fassung</translation>
    </message>
    <message>
        <source>What it does and what it is for</source>
        <translation>Was sie tut und wofür sie ist</translation>
    </message>
    <message>
        <source>Where it comes from</source>
        <translation>Woher sie kommt</translation>
    </message>
    <message>
        <source>What it meets</source>
        <translation>Was ihr begegnet</translation>
    </message>
    <message>
        <source>Brings near the cloth</source>
        <translation>Bringt an den Stoff</translation>
    </message>
    <message>
        <source>Spoiled afterwards by</source>
        <translation>Danach verdorben durch</translation>
    </message>
    <message>
        <source>Short name</source>
        <translation>Kurzname</translation>
    </message>
    <message>
        <source>small letters and hyphens</source>
        <translation>kleine Buchstaben und Bindestriche</translation>
    </message>
    <message>
        <source>Going on with a method that brings what spoils this one is asked about.</source>
        <translation>Wird mit einer Methode fortgefahren, die bringt, was diese verdirbt, so wird nachgefragt.</translation>
    </message>
    <message>
        <source>Add an amount</source>
        <translation>Menge hinzufügen</translation>
    </message>
    <message>
        <source>Take out amount {n}</source>
        <translation>Menge {n} herausnehmen</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>dry soybeans</source>
        <translation>trockene Sojabohnen</translation>
    </message>
    <message>
        <source>Counted as</source>
        <translation>Gezählt als</translation>
    </message>
    <message>
        <source>Of what</source>
        <translation>Wovon</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>goes by itself</source>
        <translation>ergibt sich</translation>
    </message>
    <message>
        <source>Grams in a US cup</source>
        <translation>Gramm je US-Tasse</translation>
    </message>
    <message>
        <source>More does no harm</source>
        <translation>Mehr schadet nicht</translation>
    </message>
    <message>
        <source>The bucket has to hold it</source>
        <translation>Der Eimer muss sie fassen</translation>
    </message>
    <message>
        <source>May be changed for a lot</source>
        <translation>Je Partie änderbar</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Anmerkung</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>Add a reading</source>
        <translation>Messwert hinzufügen</translation>
    </message>
    <message>
        <source>Take out reading {n}</source>
        <translation>Messwert {n} herausnehmen</translation>
    </message>
    <message>
        <source>What is measured</source>
        <translation>Was gemessen wird</translation>
    </message>
    <message>
        <source>temperature of the bath</source>
        <translation>Temperatur des Bads</translation>
    </message>
    <message>
        <source>Add a view</source>
        <translation>Ansicht hinzufügen</translation>
    </message>
    <message>
        <source>Take out view {n}</source>
        <translation>Ansicht {n} herausnehmen</translation>
    </message>
    <message>
        <source>Days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>What is said of it</source>
        <translation>Was darüber gesagt wird</translation>
    </message>
    <message>
        <source>Whose view it is</source>
        <translation>Wessen Ansicht es ist</translation>
    </message>
    <message>
        <source>What is done</source>
        <translation>Was getan wird</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>What happens if it waits</source>
        <translation>Was geschieht, wenn es wartet</translation>
    </message>
    <message>
        <source>{span} of work</source>
        <translation>{span} Arbeit</translation>
    </message>
    <message>
        <source>Earliest</source>
        <translation>Frühestens</translation>
    </message>
    <message>
        <source>may end after {span}</source>
        <translation>darf nach {span} enden</translation>
    </message>
    <message>
        <source>Aim</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>best after {span}</source>
        <translation>am besten nach {span}</translation>
    </message>
    <message>
        <source>Latest</source>
        <translation>Spätestens</translation>
    </message>
    <message>
        <source>must end after {span}</source>
        <translation>muss nach {span} enden</translation>
    </message>
    <message>
        <source>From its start.</source>
        <translation>Von seinem Beginn an.</translation>
    </message>
    <message>
        <source>After the step before</source>
        <translation>Nach dem Schritt davor</translation>
    </message>
    <message>
        <source>Begins at once, as the step before ends</source>
        <translation>Beginnt sofort, wenn der Schritt davor endet</translation>
    </message>
    <message>
        <source>Not before</source>
        <translation>Nicht vor</translation>
    </message>
    <message>
        <source>if there is a rest</source>
        <translation>falls es ruht</translation>
    </message>
    <message>
        <source>rests {span}</source>
        <translation>ruht {span}</translation>
    </message>
    <message>
        <source>Best after</source>
        <translation>Am besten nach</translation>
    </message>
    <message>
        <source>if it matters</source>
        <translation>falls es zählt</translation>
    </message>
    <message>
        <source>best {span} after</source>
        <translation>am besten {span} danach</translation>
    </message>
    <message>
        <source>Not later than</source>
        <translation>Nicht später als</translation>
    </message>
    <message>
        <source>no limit</source>
        <translation>keine Grenze</translation>
    </message>
    <message>
        <source>within {span}</source>
        <translation>innerhalb von {span}</translation>
    </message>
    <message>
        <source>Counted from</source>
        <translation>Gezählt ab</translation>
    </message>
    <message>
        <source>lifting</source>
        <translation>dem Herausnehmen</translation>
    </message>
    <message>
        <source>Tending</source>
        <translation>Bewegen</translation>
    </message>
    <message>
        <source>A short order</source>
        <translation>Eine kurze Anweisung</translation>
    </message>
    <message>
        <source>Stir</source>
        <translation>Rühren</translation>
    </message>
    <message>
        <source>Its button says</source>
        <translation>Der Knopf sagt</translation>
    </message>
    <message>
        <source>Stirred</source>
        <translation>Gerührt</translation>
    </message>
    <message>
        <source>At first after</source>
        <translation>Zuerst nach</translation>
    </message>
    <message>
        <source>at {span}</source>
        <translation>nach {span}</translation>
    </message>
    <message>
        <source>Then every</source>
        <translation>Dann alle</translation>
    </message>
    <message>
        <source>each {span} after the last</source>
        <translation>je {span} nach dem letzten</translation>
    </message>
    <message>
        <source>A small act inside a long step. All empty: none.</source>
        <translation>Ein kleiner Handgriff in einem langen Schritt. Alles leer: keiner.</translation>
    </message>
    <message>
        <source>Ask first after</source>
        <translation>Zuerst fragen nach</translation>
    </message>
    <message>
        <source>each {span} while you are awake</source>
        <translation>je {span}, solange Sie wach sind</translation>
    </message>
    <message>
        <source>Goes in</source>
        <translation>Hinein kommt</translation>
    </message>
    <message>
        <source>Worth measuring</source>
        <translation>Messenswert</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>As notices and buttons say it</source>
        <translation>Wie Hinweise und Knöpfe es sagen</translation>
    </message>
    <message>
        <source>When it may begin</source>
        <translation>Wenn er beginnen darf</translation>
    </message>
    <message>
        <source>Lay the cloth in the milk</source>
        <translation>Stoff in die Milch legen</translation>
    </message>
    <message>
        <source>When it ends</source>
        <translation>Wenn er endet</translation>
    </message>
    <message>
        <source>Lift the cloth and spin</source>
        <translation>Stoff herausnehmen und schleudern</translation>
    </message>
    <message>
        <source>The button says</source>
        <translation>Der Knopf sagt</translation>
    </message>
    <message>
        <source>Lifted</source>
        <translation>Herausgenommen</translation>
    </message>
    <message>
        <source>Coat and milk</source>
        <translation>Auftrag und Milch</translation>
    </message>
    <message>
        <source>Coat</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>The coat may be left out</source>
        <translation>Der Auftrag darf wegbleiben</translation>
    </message>
    <message>
        <source>Makes milk</source>
        <translation>Ergibt Milch</translation>
    </message>
    <message>
        <source>Uses milk</source>
        <translation>Braucht Milch</translation>
    </message>
    <message>
        <source>The cure</source>
        <translation>Die Reife</translation>
    </message>
    <message>
        <source>Once it is over</source>
        <translation>Wenn sie vorbei ist</translation>
    </message>
    <message>
        <source>ready for immersion</source>
        <translation>bereit für das Bad</translation>
    </message>
    <message>
        <source>Days offered first</source>
        <translation>Zuerst angebotene Tage</translation>
    </message>
    <message>
        <source>Best for painting, days</source>
        <translation>Am besten zum Malen, Tage</translation>
    </message>
    <message>
        <source>Days count from fully dry. Each view is a choice with its source.</source>
        <translation>Die Tage zählen ab ganz trocken. Jede Ansicht ist eine Wahl mit ihrer Quelle.</translation>
    </message>
    <message>
        <source>Views</source>
        <translation>Ansichten</translation>
    </message>
    <message>
        <source>Rang</source>
        <translation>Klingelte</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Wie</translation>
    </message>
    <message>
        <source>Answer</source>
        <translation>Antwort</translation>
    </message>
    <message>
        <source>Choose a reminder to read when and how it rang.</source>
        <translation>Eine Erinnerung wählen und lesen, wann und wie sie klingelte.</translation>
    </message>
    <message>
        <source>Find a lot, an act, an answer, a channel</source>
        <translation>Partie, Handgriff, Antwort oder Weg suchen</translation>
    </message>
    <message>
        <source>Find in what rang</source>
        <translation>Suchen in dem, was klingelte</translation>
    </message>
    <message>
        <source>What rang</source>
        <translation>Was klingelte</translation>
    </message>
    <message>
        <source>The chosen reminder</source>
        <translation>Die gewählte Erinnerung</translation>
    </message>
    <message>
        <source>metric</source>
        <translation>metrisch</translation>
    </message>
    <message>
        <source>US</source>
        <translation>US</translation>
    </message>
    <message>
        <source>Say how much the bucket holds, such as 10 L.</source>
        <translation>Angeben, wie viel der Eimer fasst, etwa 10 L.</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>&amp;Keep these</source>
        <translation>So &amp;behalten</translation>
    </message>
    <message>
        <source>The amounts stand here once the weight of the cloth is known.</source>
        <translation>Hier stehen die Mengen, sobald das Gewicht des Stoffs bekannt ist.</translation>
    </message>
    <message>
        <source>Offered: {litres}</source>
        <translation>Vorgeschlagen: {litres}</translation>
    </message>
    <message>
        <source>say when it is used next</source>
        <translation>sagen, wann es wieder gebraucht wird</translation>
    </message>
    <message>
        <source>tomorrow 9:00, 14:30</source>
        <translation>tomorrow 9:00, 14:30</translation>
    </message>
    <message>
        <source>W&amp;hen</source>
        <translation>&amp;Wann</translation>
    </message>
    <message>
        <source>That did not work. What you typed is kept; try again.</source>
        <translation>Das ging nicht. Das Getippte bleibt stehen; noch einmal versuchen.</translation>
    </message>
    <message>
        <source>New lot</source>
        <translation>Neue Partie</translation>
    </message>
    <message>
        <source>Amounts</source>
        <translation>Mengen</translation>
    </message>
    <message>
        <source>&amp;Make the lot</source>
        <translation>Partie an&amp;legen</translation>
    </message>
    <message>
        <source>&amp;Take this entry back</source>
        <translation>Diesen Eintrag &amp;zurücknehmen</translation>
    </message>
    <message>
        <source>&amp;Correct it…</source>
        <translation>&amp;Berichtigen…</translation>
    </message>
    <message>
        <source>What stood there stays, struck through.</source>
        <translation>Was dort stand, bleibt durchgestrichen stehen.</translation>
    </message>
    <message>
        <source>&amp;Put it right</source>
        <translation>Richtig&amp;stellen</translation>
    </message>
    <message>
        <source>blank leaves the time as it is</source>
        <translation>leer lässt die Zeit, wie sie ist</translation>
    </message>
    <message>
        <source>&amp;Leave it</source>
        <translation>So &amp;lassen</translation>
    </message>
    <message>
        <source>blank leaves the note as it is</source>
        <translation>leer lässt die Notiz, wie sie ist</translation>
    </message>
    <message>
        <source>Nothing is changed yet. Type a time, a reading or a note.</source>
        <translation>Noch ist nichts geändert. Eine Zeit, einen Messwert oder eine Notiz eingeben.</translation>
    </message>
    <message>
        <source>For {grams} g of cloth</source>
        <translation>Für {grams} g Stoff</translation>
    </message>
    <message>
        <source>Studio</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>&amp;Name of the studio</source>
        <translation>&amp;Name der Werkstatt</translation>
    </message>
    <message>
        <source>Un&amp;its</source>
        <translation>&amp;Einheiten</translation>
    </message>
    <message>
        <source>&amp;Bucket for a new lot</source>
        <translation>Ei&amp;mer für eine neue Partie</translation>
    </message>
    <message>
        <source>Time &amp;zone</source>
        <translation>&amp;Zeitzone</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Start</translation>
    </message>
    <message>
        <source>Start at lo&amp;gin</source>
        <translation>Bei der An&amp;meldung starten</translation>
    </message>
    <message>
        <source>as the system has it</source>
        <translation>wie das System</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>high contrast</source>
        <translation>starker Kontrast</translation>
    </message>
    <message>
        <source>The window speaks it from its next start on.</source>
        <translation>Das Fenster spricht sie ab dem nächsten Start.</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>The &amp;window is</source>
        <translation>Das &amp;Fenster ist</translation>
    </message>
    <message>
        <source>Size of te&amp;xt</source>
        <translation>Größe der &amp;Schrift</translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation>S&amp;prache</translation>
    </message>
    <message>
        <source>Nothing is held back: there are no quiet hours.</source>
        <translation>Nichts wird zurückgehalten: es gibt keine Ruhezeit.</translation>
    </message>
    <message>
        <source>It is quiet now, until {end}.</source>
        <translation>Jetzt ist Ruhe, bis {end}.</translation>
    </message>
    <message>
        <source>tonight</source>
        <translation>heute Nacht</translation>
    </message>
    <message>
        <source>{day} night</source>
        <translation>{day} Nacht</translation>
    </message>
    <message>
        <source>Next quiet: {day} {start:%H:%M} to {end}.</source>
        <translation>Nächste Ruhe: {day} {start:%H:%M} bis {end}.</translation>
    </message>
    <message>
        <source>A &amp;reminder</source>
        <translation>Eine &amp;Erinnerung</translation>
    </message>
    <message>
        <source>Try the chime of a reminder</source>
        <translation>Klang einer Erinnerung ausprobieren</translation>
    </message>
    <message>
        <source>A countdown’s en&amp;d</source>
        <translation>Ende eines Coun&amp;tdowns</translation>
    </message>
    <message>
        <source>Try the chime of a countdown’s end</source>
        <translation>Klang am Ende eines Countdowns ausprobieren</translation>
    </message>
    <message>
        <source>Sp&amp;oiling</source>
        <translation>&amp;Verderben</translation>
    </message>
    <message>
        <source>Try the chime of what is spoiling</source>
        <translation>Klang für das, was verdirbt, ausprobieren</translation>
    </message>
    <message>
        <source>Say in the morning w&amp;hat the day holds</source>
        <translation>Am Morgen sagen, &amp;was der Tag bringt</translation>
    </message>
    <message>
        <source>&amp;at</source>
        <translation>&amp;um</translation>
    </message>
    <message>
        <source>Time of the morning’s look ahead</source>
        <translation>Zeit der Morgenvorschau</translation>
    </message>
    <message>
        <source>Say in the &amp;evening what to start</source>
        <translation>Am &amp;Abend sagen, was zu beginnen ist</translation>
    </message>
    <message>
        <source>a&amp;t</source>
        <translation>u&amp;m</translation>
    </message>
    <message>
        <source>Time of the evening’s look ahead</source>
        <translation>Zeit der Abendvorschau</translation>
    </message>
    <message>
        <source>What spoils &amp;may ring in quiet hours</source>
        <translation>Was verdirbt, &amp;darf in der Ruhezeit klingeln</translation>
    </message>
    <message>
        <source>Sound a &amp;chime when a reminder rings</source>
        <translation>&amp;Klang, wenn eine Erinnerung klingelt</translation>
    </message>
    <message>
        <source>silent 0 %</source>
        <translation>stumm 0 %</translation>
    </message>
    <message>
        <source>Volume of the chime in percent</source>
        <translation>Lautstärke des Klangs in Prozent</translation>
    </message>
    <message>
        <source>&amp;Lots</source>
        <translation>&amp;Partien</translation>
    </message>
    <message>
        <source>as in 26-031, 26-030</source>
        <translation>etwa 26-031, 26-030</translation>
    </message>
    <message>
        <source>N&amp;ote</source>
        <translation>N&amp;otiz</translation>
    </message>
    <message>
        <source>What went &amp;in</source>
        <translation>Was h&amp;ineinkam</translation>
    </message>
    <message>
        <source>as in fructose 5 g; lime 2 g</source>
        <translation>etwa Fruktose 5 g; Kalk 2 g</translation>
    </message>
    <message>
        <source>p&amp;H before</source>
        <translation>p&amp;H vorher</translation>
    </message>
    <message>
        <source>as in 10.5</source>
        <translation>etwa 10,5</translation>
    </message>
    <message>
        <source>&amp;Heat before</source>
        <translation>Wär&amp;me vorher</translation>
    </message>
    <message>
        <source>as in 48, or 118 F</source>
        <translation>etwa 48 oder 118 F</translation>
    </message>
    <message>
        <source>&amp;Colour of the liquid</source>
        <translation>&amp;Farbe der Flüssigkeit</translation>
    </message>
    <message>
        <source>as in yellow-green, clear</source>
        <translation>etwa gelbgrün, klar</translation>
    </message>
    <message>
        <source>&amp;Flower</source>
        <translation>&amp;Blume</translation>
    </message>
    <message>
        <source>on a vat: blue, a coppery skin</source>
        <translation>auf einer Küpe: blau, kupfrige Haut</translation>
    </message>
    <message>
        <source>a dye bath by its dye, as in “madder”</source>
        <translation>ein Farbbad nach seinem Farbstoff, etwa „madder“</translation>
    </message>
    <message>
        <source>&amp;Volume</source>
        <translation>&amp;Lautstärke</translation>
    </message>
    <message>
        <source>as in 20 L; blank takes its kind’s</source>
        <translation>etwa 20 L; leer gilt das seiner Art</translation>
    </message>
    <message>
        <source>&amp;Refresh after</source>
        <translation>&amp;Auffrischen nach</translation>
    </message>
    <message>
        <source>cloth through it, as in 10 kg; blank goes by its kind</source>
        <translation>so viel Stoff, etwa 10 kg; leer gilt seine Art</translation>
    </message>
    <message>
        <source>where it stands</source>
        <translation>wo es steht</translation>
    </message>
    <message>
        <source>&amp;New bath…</source>
        <translation>&amp;Neues Bad …</translation>
    </message>
    <message>
        <source>A new bath or vat</source>
        <translation>Ein neues Bad oder eine Küpe</translation>
    </message>
    <message>
        <source>It gets a code and a diary of its own. Its volume is offered by its kind.</source>
        <translation>Es bekommt eine Nummer und ein eigenes Tagebuch. Seine Menge wird nach seiner Art vorgeschlagen.</translation>
    </message>
    <message>
        <source>&amp;Make it</source>
        <translation>An&amp;legen</translation>
    </message>
    <message>
        <source>&amp;Kind</source>
        <translation>A&amp;rt</translation>
    </message>
    <message>
        <source>Cloth thro&amp;ugh…</source>
        <translation>St&amp;off hindurch …</translation>
    </message>
    <message>
        <source>Cloth went through</source>
        <translation>Stoff ging hindurch</translation>
    </message>
    <message>
        <source>What the bath was like before, and the cloth. Without a weight the lots’ own is taken.</source>
        <translation>Wie das Bad vorher war, und der Stoff. Ohne Gewicht gilt das der Partien.</translation>
    </message>
    <message>
        <source>&amp;Weight, dry</source>
        <translation>&amp;Gewicht, trocken</translation>
    </message>
    <message>
        <source>blank takes the lots’ own</source>
        <translation>leer gilt das der Partien</translation>
    </message>
    <message>
        <source>&amp;Step of the lot</source>
        <translation>&amp;Schritt der Partie</translation>
    </message>
    <message>
        <source>its number or name, where one lot was in it</source>
        <translation>seine Nummer oder sein Name, wo eine Partie darin war</translation>
    </message>
    <message>
        <source>&amp;Dip…</source>
        <translation>&amp;Tauchen …</translation>
    </message>
    <message>
        <source>A dip and its airing</source>
        <translation>Ein Tauchgang und sein Lüften</translation>
    </message>
    <message>
        <source>One line of the vat’s diary. The cloth is weighed once, as it goes through.</source>
        <translation>Eine Zeile im Tagebuch der Küpe. Der Stoff wird einmal gewogen, wenn er hindurchgeht.</translation>
    </message>
    <message>
        <source>How long &amp;in</source>
        <translation>Wie lange dar&amp;in</translation>
    </message>
    <message>
        <source>as in 10 min</source>
        <translation>etwa 10 min</translation>
    </message>
    <message>
        <source>How long &amp;aired</source>
        <translation>Wie lange ge&amp;lüftet</translation>
    </message>
    <message>
        <source>as in 15 min</source>
        <translation>etwa 15 min</translation>
    </message>
    <message>
        <source>Re&amp;ad…</source>
        <translation>&amp;Ablesen …</translation>
    </message>
    <message>
        <source>What it is like</source>
        <translation>Wie es ist</translation>
    </message>
    <message>
        <source>Its pH, its heat, and what it looks like.</source>
        <translation>Sein pH, seine Wärme und wie es aussieht.</translation>
    </message>
    <message>
        <source>&amp;Feed…</source>
        <translation>&amp;Füttern …</translation>
    </message>
    <message>
        <source>What it was fed</source>
        <translation>Womit es gefüttert wurde</translation>
    </message>
    <message>
        <source>What went in to keep it going, and how much of it.</source>
        <translation>Was hineinkam, damit es weitergeht, und wie viel davon.</translation>
    </message>
    <message>
        <source>R&amp;efresh…</source>
        <translation>A&amp;uffrischen …</translation>
    </message>
    <message>
        <source>It was refreshed</source>
        <translation>Es wurde aufgefrischt</translation>
    </message>
    <message>
        <source>Made anew or recharged in full: what goes through counts anew from here.</source>
        <translation>Neu angesetzt oder voll ergänzt: was hindurchgeht, zählt von hier an neu.</translation>
    </message>
    <message>
        <source>&amp;Plan its use…</source>
        <translation>Einsatz &amp;planen …</translation>
    </message>
    <message>
        <source>When it is used next</source>
        <translation>Wann es wieder gebraucht wird</translation>
    </message>
    <message>
        <source>A reminder to make it ready comes two hours before, or the evening before where that would be in quiet hours.</source>
        <translation>Zwei Stunden vorher wird erinnert, es bereitzumachen; am Abend davor, wo das in die Ruhezeit fiele.</translation>
    </message>
    <message>
        <source>&amp;Plan it</source>
        <translation>&amp;Planen</translation>
    </message>
    <message>
        <source>Made read&amp;y…</source>
        <translation>&amp;Bereitgemacht …</translation>
    </message>
    <message>
        <source>It was made ready</source>
        <translation>Es wurde bereitgemacht</translation>
    </message>
    <message>
        <source>Warmed and fed for the use that is planned.</source>
        <translation>Gewärmt und gefüttert für den geplanten Einsatz.</translation>
    </message>
    <message>
        <source>Remar&amp;k…</source>
        <translation>Be&amp;merkung …</translation>
    </message>
    <message>
        <source>A remark</source>
        <translation>Eine Bemerkung</translation>
    </message>
    <message>
        <source>Change this bath</source>
        <translation>Dieses Bad ändern</translation>
    </message>
    <message>
        <source>Its name and place, how much there is of it, and when it wants refreshing.</source>
        <translation>Sein Name und Platz, wie viel davon da ist und wann es aufgefrischt werden will.</translation>
    </message>
    <message>
        <source>&amp;Change it</source>
        <translation>Än&amp;dern</translation>
    </message>
    <message>
        <source>Try it</source>
        <translation>Ausprobieren</translation>
    </message>
    <message>
        <source>0 %, silent</source>
        <translation>0 %, stumm</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>There is no lot to make a tag for. Nothing was printed; choose a lot.</source>
        <translation>Es gibt keine Partie für ein Etikett. Nichts wurde gedruckt; eine Partie wählen.</translation>
    </message>
    <message>
        <source>{count} tags at once are too many. Nothing was printed; make up to {MOST_TAGS} at a time.</source>
        <translation>{count} Etiketten auf einmal sind zu viele. Nichts wurde gedruckt; höchstens {MOST_TAGS} auf einmal machen.</translation>
    </message>
    <message>
        <source>Tags </source>
        <translation>Etiketten </translation>
    </message>
    <message>
        <source>Studio Log</source>
        <translation>Studio Log</translation>
    </message>
    <message>
        <source>Tags</source>
        <translation>Etiketten</translation>
    </message>
    <message>
        <source>What became of the tags</source>
        <translation>Was aus den Etiketten wurde</translation>
    </message>
    <message>
        <source>Single tag, own size</source>
        <translation>Einzelnes Etikett, eigene Größe</translation>
    </message>
    <message>
        <source>Tape, cut where the words end</source>
        <translation>Band, am Ende der Wörter geschnitten</translation>
    </message>
    <message>
        <source>Sheet of labels, own measures</source>
        <translation>Etikettenbogen, eigene Maße</translation>
    </message>
    <message>
        <source>Page, wide</source>
        <translation>Seite, breit</translation>
    </message>
    <message>
        <source>Page, high</source>
        <translation>Seite, hoch</translation>
    </message>
    <message>
        <source>Label, wide</source>
        <translation>Etikett, breit</translation>
    </message>
    <message>
        <source>Label, high</source>
        <translation>Etikett, hoch</translation>
    </message>
    <message>
        <source>First from the left</source>
        <translation>Erstes von links</translation>
    </message>
    <message>
        <source>First from the top</source>
        <translation>Erstes von oben</translation>
    </message>
    <message>
        <source>To the next across</source>
        <translation>Zum nächsten quer</translation>
    </message>
    <message>
        <source>To the next down</source>
        <translation>Zum nächsten abwärts</translation>
    </message>
    <message>
        <source>&amp;Stock</source>
        <translation>&amp;Bogen</translation>
    </message>
    <message>
        <source>Labels across</source>
        <translation>Etiketten quer</translation>
    </message>
    <message>
        <source>Labels down</source>
        <translation>Etiketten abwärts</translation>
    </message>
    <message>
        <source>Printer dots to the inch</source>
        <translation>Druckpunkte je Zoll</translation>
    </message>
    <message>
        <source>Plain proportion, as dye houses define it.</source>
        <translation>Einfaches Verhältnis, wie Färbereien es festlegen.</translation>
    </message>
    <message>
        <source>&amp;Cloth</source>
        <translation>&amp;Stoff</translation>
    </message>
    <message>
        <source>Its dry weight, scoured and fully dry.</source>
        <translation>Sein Trockengewicht, gereinigt und ganz trocken.</translation>
    </message>
    <message>
        <source>A vessel of {litres} or more leaves a tenth free at its rim.</source>
        <translation>Ein Gefäß von {litres} oder mehr lässt am Rand ein Zehntel frei.</translation>
    </message>
    <message>
        <source>A stock solution is weaker than 100 %.</source>
        <translation>Eine Stammlösung ist schwächer als 100 %.</translation>
    </message>
    <message>
        <source>{strength} % means {strength} g made up to 100 mL.</source>
        <translation>{strength} % heißt {strength} g auf 100 mL aufgefüllt.</translation>
    </message>
    <message>
        <source>{other} does not stand for {salt}: they hold different things.</source>
        <translation>{other} steht nicht für {salt}: sie enthalten Verschiedenes.</translation>
    </message>
    <message>
        <source>{grams} of {salt} hold as much as that of {other}. Good to the purity of what stands on the shelf: crystals dry out and powders draw water.</source>
        <translation>{grams} {salt} enthalten so viel wie diese Menge {other}. So gut wie die Reinheit dessen, was im Regal steht: Kristalle verwittern und Pulver ziehen Wasser.</translation>
    </message>
    <message>
        <source>Standard atomic weights (IUPAC, 2021).</source>
        <translation>Standard-Atomgewichte (IUPAC, 2021).</translation>
    </message>
    <message>
        <source>Three parts of acetate to one of aluminium turn {alum} of alum into aluminium acetate.</source>
        <translation>Drei Teile Acetat auf ein Aluminium machen aus {alum} Alaun Aluminiumacetat.</translation>
    </message>
    <message>
        <source>If {cloth} is the weight after scouring, it was {before} before.</source>
        <translation>Ist {cloth} das Gewicht nach dem Reinigen, so waren es vorher {before}.</translation>
    </message>
    <message>
        <source>One running metre weighs {grams}.</source>
        <translation>Ein laufender Meter wiegt {grams}.</translation>
    </message>
    <message>
        <source>{share} % shorter</source>
        <translation>{share} % kürzer</translation>
    </message>
    <message>
        <source>{share} % longer</source>
        <translation>{share} % länger</translation>
    </message>
    <message>
        <source>Share of the cloth’s weight</source>
        <translation>Anteil vom Stoffgewicht</translation>
    </message>
    <message>
        <source>How much of a dye, a mordant or beans, as per cent of the weight of the cloth.</source>
        <translation>Wie viel Farbstoff, Beize oder Bohnen, in Prozent vom Gewicht des Stoffs.</translation>
    </message>
    <message>
        <source>&amp;Share</source>
        <translation>&amp;Anteil</translation>
    </message>
    <message>
        <source>Per cent of the weight of fibre (% WOF).</source>
        <translation>Prozent vom Fasergewicht (% WOF).</translation>
    </message>
    <message>
        <source>S&amp;tep of the scale</source>
        <translation>S&amp;chritt der Waage</translation>
    </message>
    <message>
        <source>The least step that the scale shows.</source>
        <translation>Der kleinste Schritt, den die Waage zeigt.</translation>
    </message>
    <message>
        <source>Litres of a bath</source>
        <translation>Liter eines Bades</translation>
    </message>
    <message>
        <source>How much bath the cloth swims in at a liquor ratio, and the vessel for it.</source>
        <translation>In wie viel Bad der Stoff bei einem Flottenverhältnis schwimmt, und das Gefäß dafür.</translation>
    </message>
    <message>
        <source>Liquor &amp;ratio</source>
        <translation>Flotten&amp;verhältnis</translation>
    </message>
    <message>
        <source>Litres of bath to the kilogram of dry cloth.</source>
        <translation>Liter Bad auf das Kilogramm trockenen Stoffs.</translation>
    </message>
    <message>
        <source>From a stock solution</source>
        <translation>Aus einer Stammlösung</translation>
    </message>
    <message>
        <source>How much of a solution holds a small weight that a scale cannot show.</source>
        <translation>Wie viel einer Lösung ein kleines Gewicht enthält, das eine Waage nicht zeigt.</translation>
    </message>
    <message>
        <source>&amp;Weight wanted</source>
        <translation>Gewünschtes &amp;Gewicht</translation>
    </message>
    <message>
        <source>What the recipe asks for.</source>
        <translation>Was die Vorschrift verlangt.</translation>
    </message>
    <message>
        <source>&amp;Strength</source>
        <translation>&amp;Stärke</translation>
    </message>
    <message>
        <source>Grams in 100 mL of the solution.</source>
        <translation>Gramm in 100 mL der Lösung.</translation>
    </message>
    <message>
        <source>One salt in place of another</source>
        <translation>Ein Salz statt eines anderen</translation>
    </message>
    <message>
        <source>Washing soda for soda ash, crystals for a dried powder, one alum for another.</source>
        <translation>Kristallsoda statt wasserfreier Soda, Kristalle statt Pulver, ein Alaun statt eines anderen.</translation>
    </message>
    <message>
        <source>&amp;Weight</source>
        <translation>&amp;Gewicht</translation>
    </message>
    <message>
        <source>The recipe’s &amp;salt</source>
        <translation>&amp;Salz der Vorschrift</translation>
    </message>
    <message>
        <source>What the recipe is written for.</source>
        <translation>Wofür die Vorschrift geschrieben ist.</translation>
    </message>
    <message>
        <source>What is on the s&amp;helf</source>
        <translation>Was im &amp;Regal steht</translation>
    </message>
    <message>
        <source>What is there instead. Ask the supplier how much water it holds.</source>
        <translation>Was stattdessen da ist. Den Lieferanten fragen, wie viel Wasser es enthält.</translation>
    </message>
    <message>
        <source>Acetate to an alum</source>
        <translation>Acetat zu einem Alaun</translation>
    </message>
    <message>
        <source>How much sodium acetate makes aluminium acetate out of alum.</source>
        <translation>Wie viel Natriumacetat aus Alaun Aluminiumacetat macht.</translation>
    </message>
    <message>
        <source>&amp;Alum</source>
        <translation>&amp;Alaun</translation>
    </message>
    <message>
        <source>Potassium alum.</source>
        <translation>Kalialaun.</translation>
    </message>
    <message>
        <source>A&amp;cetate</source>
        <translation>A&amp;cetat</translation>
    </message>
    <message>
        <source>With its water of crystals, or without.</source>
        <translation>Mit Kristallwasser oder ohne.</translation>
    </message>
    <message>
        <source>A used bath, recharged</source>
        <translation>Ein gebrauchtes Bad, aufgefrischt</translation>
    </message>
    <message>
        <source>What tops a used bath up, as a share of its first charge.</source>
        <translation>Was ein gebrauchtes Bad auffrischt, als Anteil vom ersten Ansatz.</translation>
    </message>
    <message>
        <source>&amp;First charge</source>
        <translation>&amp;Erster Ansatz</translation>
    </message>
    <message>
        <source>What went in at first.</source>
        <translation>Was zuerst hineinkam.</translation>
    </message>
    <message>
        <source>Of the first charge; mordant baths are often topped up by half.</source>
        <translation>Vom ersten Ansatz; Beizbäder werden oft um die Hälfte aufgefrischt.</translation>
    </message>
    <message>
        <source>Weight before and after scouring</source>
        <translation>Gewicht vor und nach dem Reinigen</translation>
    </message>
    <message>
        <source>Recipes count from one or the other; scouring takes size, wax and oil.</source>
        <translation>Vorschriften rechnen vom einen oder vom anderen; Reinigen nimmt Schlichte, Wachs und Öl.</translation>
    </message>
    <message>
        <source>Its weight before.</source>
        <translation>Sein Gewicht vorher.</translation>
    </message>
    <message>
        <source>&amp;Loss</source>
        <translation>&amp;Verlust</translation>
    </message>
    <message>
        <source>Per cent of the weight before. Weigh a swatch to know.</source>
        <translation>Prozent vom Gewicht vorher. Eine Probe wiegen, um es zu wissen.</translation>
    </message>
    <message>
        <source>Cloth by its size</source>
        <translation>Stoff nach seiner Größe</translation>
    </message>
    <message>
        <source>What a length of cloth weighs, from its weight by area and its width.</source>
        <translation>Was ein Stück Stoff wiegt, aus Flächengewicht und Breite.</translation>
    </message>
    <message>
        <source>Weight by &amp;area</source>
        <translation>&amp;Flächengewicht</translation>
    </message>
    <message>
        <source>As on its label: 150 g/m², 4.5 oz/yd², 16 momme.</source>
        <translation>Wie auf dem Etikett: 150 g/m², 4,5 oz/yd², 16 momme.</translation>
    </message>
    <message>
        <source>&amp;Width</source>
        <translation>B&amp;reite</translation>
    </message>
    <message>
        <source>Of the roll.</source>
        <translation>Des Ballens.</translation>
    </message>
    <message>
        <source>&amp;Length</source>
        <translation>&amp;Länge</translation>
    </message>
    <message>
        <source>Of the cut.</source>
        <translation>Des Stücks.</translation>
    </message>
    <message>
        <source>Shrinkage</source>
        <translation>Einlaufen</translation>
    </message>
    <message>
        <source>What a length lost in the wash.</source>
        <translation>Was eine Länge in der Wäsche verlor.</translation>
    </message>
    <message>
        <source>&amp;Before</source>
        <translation>&amp;Vorher</translation>
    </message>
    <message>
        <source>Between two marks.</source>
        <translation>Zwischen zwei Marken.</translation>
    </message>
    <message>
        <source>&amp;After</source>
        <translation>&amp;Nachher</translation>
    </message>
    <message>
        <source>The same, washed.</source>
        <translation>Dieselbe, gewaschen.</translation>
    </message>
    <message>
        <source>&amp;Height</source>
        <translation>&amp;Höhe</translation>
    </message>
    <message>
        <source>How &amp;many of each</source>
        <translation>Wie &amp;viele von jedem</translation>
    </message>
    <message>
        <source>Start at p&amp;lace</source>
        <translation>Ab P&amp;latz</translation>
    </message>
    <message>
        <source>Sho&amp;w page</source>
        <translation>Seite &amp;zeigen</translation>
    </message>
    <message>
        <source>Methods (*.toml)</source>
        <translation>Methoden (*.toml)</translation>
    </message>
    <message>
        <source>Compare with…</source>
        <translation>Vergleichen mit …</translation>
    </message>
    <message>
        <source>The draft before it is one Undo away.</source>
        <translation>Der Entwurf davor ist ein Rückgängig entfernt.</translation>
    </message>
    <message>
        <source>{title} is written to {file}.</source>
        <translation>{title} ist geschrieben: {file}.</translation>
    </message>
    <message>
        <source>Methods — Studio Log</source>
        <translation>Methoden — Studio Log</translation>
    </message>
    <message>
        <source>Amounts for so much cloth</source>
        <translation>Mengen für so viel Stoff</translation>
    </message>
    <message>
        <source>Compare with</source>
        <translation>Vergleichen mit</translation>
    </message>
    <message>
        <source>Where they part</source>
        <translation>Worin sie sich unterscheiden</translation>
    </message>
    <message>
        <source>Read from {file}. Nothing is kept until it is saved.</source>
        <translation>Gelesen aus {file}. Nichts wird behalten, bis es gespeichert ist.</translation>
    </message>
    <message>
        <source>Cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>&amp;New lot with it…</source>
        <translation>&amp;Neue Partie damit …</translation>
    </message>
    <message>
        <source>Copy and &amp;edit…</source>
        <translation>Kopieren und b&amp;earbeiten …</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>Save as P&amp;DF…</source>
        <translation>Als P&amp;DF speichern…</translation>
    </message>
    <message>
        <source>E&amp;xport…</source>
        <translation>E&amp;xportieren …</translation>
    </message>
    <message>
        <source>&amp;Import…</source>
        <translation>&amp;Importieren …</translation>
    </message>
    <message>
        <source>Amounts for {n} g of cloth</source>
        <translation>Mengen für {n} g Stoff</translation>
    </message>
    <message>
        <source>The draft you left is here again. Give it up to begin with another.</source>
        <translation>Der verlassene Entwurf ist wieder da. Ihn aufgeben, um mit einem anderen zu beginnen.</translation>
    </message>
    <message>
        <source>A copy: the method it came from stays.</source>
        <translation>Eine Kopie: die Methode, aus der sie kommt, bleibt.</translation>
    </message>
    <message>
        <source>The draft is kept.</source>
        <translation>Der Entwurf ist aufbewahrt.</translation>
    </message>
    <message>
        <source>The draft is given up. Nothing else was changed.</source>
        <translation>Der Entwurf ist aufgegeben. Sonst wurde nichts geändert.</translation>
    </message>
    <message>
        <source>Export the method</source>
        <translation>Methode exportieren</translation>
    </message>
    <message>
        <source>Save the page as a PDF</source>
        <translation>Seite als PDF speichern</translation>
    </message>
    <message>
        <source>Import a method</source>
        <translation>Methode importieren</translation>
    </message>
    <message>
        <source> of {count}</source>
        <translation> von {count}</translation>
    </message>
    <message>
        <source>Sent to {printer}.</source>
        <translation>An {printer} gesendet.</translation>
    </message>
    <message>
        <source>the printer</source>
        <translation>den Drucker</translation>
    </message>
    <message>
        <source>tag-{code}.pdf</source>
        <translation>etikett-{code}.pdf</translation>
    </message>
    <message>
        <source>Save the tags as a PDF</source>
        <translation>Die Etiketten als PDF speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
    <message>
        <source>What tags are printed on, and what they say</source>
        <translation>Worauf Anhänger gedruckt werden und was sie sagen</translation>
    </message>
    <message>
        <source>P&amp;rinter</source>
        <translation>D&amp;rucker</translation>
    </message>
    <message>
        <source>It says</source>
        <translation>Darauf steht</translation>
    </message>
    <message>
        <source>Another one, or a PDF</source>
        <translation>Ein anderer, oder ein PDF</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>Day it was begun</source>
        <translation>Tag des Beginns</translation>
    </message>
    <message>
        <source>Times to write in</source>
        <translation>Zeiten zum Eintragen</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>QR code</source>
        <translation>QR-Code</translation>
    </message>
    <message>
        <source>No printer is set up on this computer. Nothing was printed. Save the tags as a PDF and print that elsewhere, at 100 % and not fitted to the page.</source>
        <translation>Auf diesem Rechner ist kein Drucker eingerichtet. Nichts wurde gedruckt. Die Etiketten als PDF speichern und anderswo drucken, mit 100 % und nicht an die Seite angepasst.</translation>
    </message>
    <message>
        <source>The printing part of the program cannot be loaded here. Nothing was printed. Save the tags as a PDF instead.</source>
        <translation>Der Druckteil des Programms kann hier nicht geladen werden. Nichts wurde gedruckt. Die Etiketten stattdessen als PDF speichern.</translation>
    </message>
    <message>
        <source>{what} shortened</source>
        <translation>{what} gekürzt</translation>
    </message>
    <message>
        <source>no room for: {names}</source>
        <translation>kein Platz für: {names}</translation>
    </message>
    <message>
        <source>{rows_left_out} of {count} rows left out</source>
        <translation>{rows_left_out} von {count} Zeilen weggelassen</translation>
    </message>
    <message>
        <source>a row shortened</source>
        <translation>eine Zeile gekürzt</translation>
    </message>
    <message>
        <source>So with {rest} more.</source>
        <translation>Ebenso bei {rest} weiteren.</translation>
    </message>
    <message>
        <source>Preview of the tags</source>
        <translation>Vorschau der Etiketten</translation>
    </message>
    <message>
        <source>New lot…</source>
        <translation>Neue Partie…</translation>
    </message>
    <message>
        <source>Print tags…</source>
        <translation>Etiketten drucken…</translation>
    </message>
    <message>
        <source>The text cannot be shown as a form until it is mended. Nothing is lost: it is under “Text”.</source>
        <translation>Der Text kann nicht als Formular gezeigt werden, bis er berichtigt ist. Nichts ist verloren: er steht unter „Text“.</translation>
    </message>
    <message>
        <source>The method as text</source>
        <translation>Die Methode als Text</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Take the last change back</source>
        <translation>Die letzte Änderung zurücknehmen</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Do again what was taken back</source>
        <translation>Das Zurückgenommene wieder tun</translation>
    </message>
    <message>
        <source>&amp;Save as the studio’s own</source>
        <translation>Als eigene &amp;speichern</translation>
    </message>
    <message>
        <source>&amp;Back to the page</source>
        <translation>&amp;Zurück zur Seite</translation>
    </message>
    <message>
        <source>Back to the page; the draft is kept</source>
        <translation>Zurück zur Seite; der Entwurf bleibt</translation>
    </message>
    <message>
        <source>&amp;Give the draft up</source>
        <translation>Entwurf auf&amp;geben</translation>
    </message>
    <message>
        <source>Ctrl+Z, in the form as in the text</source>
        <translation>Strg+Z, im Formular wie im Text</translation>
    </message>
    <message>
        <source>&amp;Form</source>
        <translation>&amp;Formular</translation>
    </message>
    <message>
        <source>&amp;Text</source>
        <translation>&amp;Text</translation>
    </message>
    <message>
        <source>What it comes to</source>
        <translation>Was daraus wird</translation>
    </message>
    <message>
        <source>as of </source>
        <translation>Stand </translation>
    </message>
    <message>
        <source>Next: nothing</source>
        <translation>Als Nächstes: nichts</translation>
    </message>
    <message>
        <source>Next: {named} · {due_words}</source>
        <translation>Als Nächstes: {named} · {due_words}</translation>
    </message>
    <message>
        <source>Next: {named}</source>
        <translation>Als Nächstes: {named}</translation>
    </message>
    <message>
        <source>&amp;Open</source>
        <translation>Ö&amp;ffnen</translation>
    </message>
    <message>
        <source>Studio Log
{next_words}</source>
        <translation>Studio Log
{next_words}</translation>
    </message>
    <message>
        <source>the tray</source>
        <translation>die Leiste</translation>
    </message>
    <message>
        <source>handed to the tray; nothing tells if it is seen</source>
        <translation>an die Leiste gegeben; ob es gesehen wird, sagt nichts</translation>
    </message>
    <message>
        <source>My studio</source>
        <translation>Meine Werkstatt</translation>
    </message>
    <message>
        <source>metric: grams, litres, metres</source>
        <translation>metrisch: Gramm, Liter, Meter</translation>
    </message>
    <message>
        <source>US: ounces, cups, yards</source>
        <translation>US: Unzen, Tassen, Yards</translation>
    </message>
    <message>
        <source>Quiet hours begin</source>
        <translation>Ruhezeit beginnt</translation>
    </message>
    <message>
        <source>Quiet hours end</source>
        <translation>Ruhezeit endet</translation>
    </message>
    <message>
        <source>&amp;Begin</source>
        <translation>&amp;Anfangen</translation>
    </message>
    <message>
        <source>Welcome to Studio Log</source>
        <translation>Willkommen bei Studio Log</translation>
    </message>
    <message>
        <source>A dyer’s logbook that rings at the right moment. Three things, and it begins; each can be changed later under File, Settings.</source>
        <translation>Ein Färberbuch, das im richtigen Augenblick klingelt. Drei Dinge, dann geht es los; alles kann später unter Datei, Einstellungen geändert werden.</translation>
    </message>
    <message>
        <source>&amp;Units (any may be typed)</source>
        <translation>&amp;Einheiten (getippt werden darf jede)</translation>
    </message>
    <message>
        <source>&amp;Quiet hours, in which nothing rings: from</source>
        <translation>&amp;Ruhezeit, in der nichts klingelt: ab</translation>
    </message>
    <message>
        <source>un&amp;til</source>
        <translation>&amp;bis</translation>
    </message>
    <message>
        <source>Welcome</source>
        <translation>Willkommen</translation>
    </message>
    <message>
        <source>13:08, -3h, at eight last night</source>
        <translation>13:08, -3h, at eight last night</translation>
    </message>
    <message>
        <source>blank means now</source>
        <translation>leer heißt jetzt</translation>
    </message>
    <message>
        <source>{understood}: still ahead. Enter it once it has happened.</source>
        <translation>{understood}: noch nicht gewesen. Eintragen, wenn es geschehen ist.</translation>
    </message>
    <message>
        <source>71 F, pH 6.8, 160 g</source>
        <translation>71 F, pH 6.8, 160 g</translation>
    </message>
    <message>
        <source>temperature, pH, weight, or name: value</source>
        <translation>Temperatur, pH, Gewicht oder Name: Wert</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Understood: {understood}</source>
        <translation>Verstanden: {understood}</translation>
    </message>
    <message>
        <source>When it suits</source>
        <translation>Wenn es passt</translation>
    </message>
    <message>
        <source>Soon</source>
        <translation>Bald</translation>
    </message>
    <message>
        <source>Open all folds</source>
        <translation>Alle Falten öffnen</translation>
    </message>
    <message>
        <source>Fold all</source>
        <translation>Alle falten</translation>
    </message>
    <message>
        <source>quiet stretches are pleated; click a pleat to open it</source>
        <translation>ruhige Strecken sind gefaltet; ein Klick auf eine Falte öffnet sie</translation>
    </message>
    <message>
        <source>Show who uses vessels, drying line and heat, and where lots meet (L)</source>
        <translation>Zeigen, wer Gefäße, Leine und Wärme braucht, und wo sich Partien treffen (L)</translation>
    </message>
    <message>
        <source>Lines</source>
        <translation>Linien</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Lines · {count}</source>
        <translation>Linien · {count}</translation>
    </message>
    <message>
        <source>1 time</source>
        <translation>1-mal</translation>
    </message>
    <message>
        <source>{count} times</source>
        <translation>{count}-mal</translation>
    </message>
    <message>
        <source>Lots meet {count}; the first: {first} </source>
        <translation>Partien treffen sich {count}; zuerst: {first} </translation>
    </message>
    <message>
        <source>Lines for vessels, drying line and heat</source>
        <translation>Linien für Gefäße, Trockenleine und Wärme</translation>
    </message>
    <message>
        <source>Find now</source>
        <translation>Jetzt suchen</translation>
    </message>
    <message>
        <source>Find now (N)</source>
        <translation>Jetzt suchen (N)</translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation>Verkleinern</translation>
    </message>
    <message>
        <source>Zoom out (−)</source>
        <translation>Verkleinern (−)</translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation>Vergrößern</translation>
    </message>
    <message>
        <source>Zoom in (+)</source>
        <translation>Vergrößern (+)</translation>
    </message>
    <message>
        <source>Open or fold every pleat</source>
        <translation>Jede Falte öffnen oder schließen</translation>
    </message>
    <message>
        <source>Spoiling</source>
        <translation>Verdirbt</translation>
    </message>
    <message>
        <source>{count} dryings logged here took {mean} times what is worked out, within a factor of {spread}.</source>
        <translation>{count} hier notierte Trocknungen brauchten das {mean}-Fache des Errechneten, auf einen Faktor von {spread} genau.</translation>
    </message>
    <message>
        <source>{gsm} g/m² {fibre}, {spun}, at {celsius} °C and {humidity} % with air of {air} m/s: each of {sides} sides gives off {rate} g/m² an hour at {surface} °C.</source>
        <translation>{gsm} g/m² {fibre}, {spun}, bei {celsius} °C und {humidity} % mit Luft von {air} m/s: jede von {sides} Seiten gibt bei {surface} °C {rate} g/m² in der Stunde ab.</translation>
    </message>
    <message>
        <source>A calculation: real cloth takes about half to one and a half times as long. Log dryings with the room&apos;s heat and humidity, and your own factor is learnt.</source>
        <translation>Eine Rechnung: wirklicher Stoff braucht etwa das Halbe bis Anderthalbfache. Trocknungen mit Wärme und Feuchte des Raums notieren, dann wird der eigene Faktor gelernt.</translation>
    </message>
    <message>
        <source>{ratio} times the dry weight</source>
        <translation>das {ratio}-Fache des Trockengewichts</translation>
    </message>
    <message>
        <source>{said}: keep soaking, to {least} g at least.</source>
        <translation>{said}: weiter einweichen, bis mindestens {least} g.</translation>
    </message>
    <message>
        <source>{said}: more than beans take up; drain them and weigh again.</source>
        <translation>{said}: mehr, als Bohnen aufnehmen; abtropfen lassen und noch einmal wiegen.</translation>
    </message>
    <message>
        <source>{said}: soaked through.</source>
        <translation>{said}: durchgeweicht.</translation>
    </message>
    <message>
        <source>At {celsius} °C beans are likely to have taken up their own weight by then; varieties differ by two fifths. Skins smooth and no hard core decide, and the nose.</source>
        <translation>Bei {celsius} °C haben Bohnen bis dahin wohl ihr eigenes Gewicht aufgenommen; Sorten weichen um zwei Fünftel ab. Glatte Haut und kein harter Kern entscheiden, und die Nase.</translation>
    </message>
    <message>
        <source>wrung by hand</source>
        <translation>von Hand ausgewrungen</translation>
    </message>
    <message>
        <source>hung dripping</source>
        <translation>tropfnass aufgehängt</translation>
    </message>
    <message>
        <source>spun at {rpm} rpm</source>
        <translation>mit {rpm} U/min geschleudert</translation>
    </message>
    <message>
        <source>{part} % of its weight in water, weighed</source>
        <translation>{part} % seines Gewichts an Wasser, gewogen</translation>
    </message>
    <message>
        <source>The air is at {humidity} % and the cloth still damp: it may mildew. Move the air, warm the room or draw the water out of it; spin the cloth again.</source>
        <translation>Die Luft hat {humidity} % und der Stoff ist noch feucht: er kann stockig werden. Luft bewegen, Raum wärmen oder ihm das Wasser entziehen; den Stoff noch einmal schleudern.</translation>
    </message>
    <message>
        <source>The cloth has been damp for {hours} h. Soy is food for mould: dry it today, smell it, and keep it apart until it is dry.</source>
        <translation>Der Stoff ist seit {hours} h feucht. Soja ist Nahrung für Schimmel: heute trocknen, daran riechen und bis dahin getrennt halten.</translation>
    </message>
    <message>
        <source>{count} readings, temperatures in {scale}.</source>
        <translation>{count} Messwerte, Temperaturen in {scale}.</translation>
    </message>
    <message>
        <source>{count} lines could not be read and are left out: {lines}</source>
        <translation>{count} Zeilen waren nicht zu lesen und sind weggelassen: {lines}</translation>
    </message>
    <message>
        <source>madder</source>
        <translation>Krapp</translation>
    </message>
    <message>
        <source>it turns brown for good</source>
        <translation>er wird für immer braun</translation>
    </message>
    <message>
        <source>alkanet</source>
        <translation>Alkanna</translation>
    </message>
    <message>
        <source>its colour is spoilt</source>
        <translation>ihre Farbe ist verdorben</translation>
    </message>
    <message>
        <source>turmeric</source>
        <translation>Kurkuma</translation>
    </message>
    <message>
        <source>its yellow dulls</source>
        <translation>ihr Gelb wird stumpf</translation>
    </message>
    <message>
        <source>sappanwood</source>
        <translation>Sappanholz</translation>
    </message>
    <message>
        <source>its red dulls</source>
        <translation>sein Rot wird stumpf</translation>
    </message>
    <message>
        <source>chlorophyllin</source>
        <translation>Chlorophyllin</translation>
    </message>
    <message>
        <source>its green dulls</source>
        <translation>sein Grün wird stumpf</translation>
    </message>
    <message>
        <source>myrobalan</source>
        <translation>Myrobalane</translation>
    </message>
    <message>
        <source>its colour browns</source>
        <translation>ihre Farbe bräunt</translation>
    </message>
    <message>
        <source>cutch</source>
        <translation>Catechu</translation>
    </message>
    <message>
        <source>its colour dulls</source>
        <translation>seine Farbe wird stumpf</translation>
    </message>
    <message>
        <source>aluminium acetate</source>
        <translation>Aluminiumacetat</translation>
    </message>
    <message>
        <source>it breaks down before it is in the cloth</source>
        <translation>es zerfällt, ehe es im Stoff ist</translation>
    </message>
    <message>
        <source>iron</source>
        <translation>Eisen</translation>
    </message>
    <message>
        <source>it makes the cloth tender</source>
        <translation>es macht den Stoff mürbe</translation>
    </message>
    <message>
        <source>the soak</source>
        <translation>das Einweichen</translation>
    </message>
    <message>
        <source>the water sours and takes what should bind</source>
        <translation>das Wasser säuert und nimmt, was binden soll</translation>
    </message>
    <message>
        <source>common practice</source>
        <translation>verbreitete Praxis</translation>
    </message>
    <message>
        <source>not dry yet</source>
        <translation>noch nicht trocken</translation>
    </message>
    <message>
        <source>{age} of {days} days</source>
        <translation>{age} von {days} Tagen</translation>
    </message>
    <message>
        <source>dry for {hours} h</source>
        <translation>seit {hours} h trocken</translation>
    </message>
    <message>
        <source>{step} lays soyed cloth into alkali, and alkali takes the soy off. Do it before the soy, or with a neutral soap.</source>
        <translation>{step} legt sojierten Stoff in Lauge, und Lauge löst die Soja ab. Vor der Soja tun, oder mit neutraler Seife.</translation>
    </message>
    <message>
        <source>The soy has not cured ({age}): in {step} it washes off into the bath, and the cloth takes colour unevenly. Let it rest, or set it with steam.</source>
        <translation>Die Soja ist nicht ausgereift ({age}): bei {step} wäscht sie sich ins Bad, und der Stoff färbt ungleich. Ruhen lassen oder mit Dampf fixieren.</translation>
    </message>
    <message>
        <source>Painted {days} days ago: before {least} days a wash takes colour with it. Wait, or set it with steam.</source>
        <translation>Vor {days} Tagen bemalt: vor {least} Tagen nimmt eine Wäsche Farbe mit. Warten oder mit Dampf fixieren.</translation>
    </message>
    <message>
        <source>The mordant with acetate is {since}: chalk or bran washes it off while it smells of vinegar. Let it hang half a day from dry, until nothing smells.</source>
        <translation>Die Beize mit Acetat ist {since}: Kreide oder Kleie wäscht sie ab, solange sie nach Essig riecht. Ab trocken einen halben Tag hängen lassen, bis nichts mehr riecht.</translation>
    </message>
    <message>
        <source>{percent} % of {title} on the weight of the cloth is more than {most} %: iron makes cloth tender and goes on doing so. Take less.</source>
        <translation>{percent} % {title} auf das Stoffgewicht sind mehr als {most} %: Eisen macht Stoff mürbe, auch später noch. Weniger nehmen.</translation>
    </message>
    <message>
        <source>{percent} % of {title} is more than {most} % on {fibre}: hot soda harms it. Use a neutral soap.</source>
        <translation>{percent} % {title} sind mehr als {most} % auf {fibre}: heiße Soda schadet ihr. Neutrale Seife nehmen.</translation>
    </message>
    <message>
        <source>{heat} °C: above {most} °C {title} spoils, {reason}. Take the heat off now, or cool the bath.</source>
        <translation>{heat} °C: über {most} °C verdirbt {title}, {reason}. Jetzt vom Feuer nehmen oder das Bad kühlen.</translation>
    </message>
    <message>
        <source>washing soda crystals</source>
        <translation>Kristallsoda</translation>
    </message>
    <message>
        <source>soda ash</source>
        <translation>Sodapulver</translation>
    </message>
    <message>
        <source>aluminium sulphate of 18 waters</source>
        <translation>Aluminiumsulfat mit 18 Wassern</translation>
    </message>
    <message>
        <source>alum</source>
        <translation>Alaun</translation>
    </message>
    <message>
        <source>sodium acetate without water</source>
        <translation>Natriumacetat ohne Wasser</translation>
    </message>
    <message>
        <source>About {grams} g of protein to the litre.</source>
        <translation>Etwa {grams} g Eiweiß im Liter.</translation>
    </message>
    <message>
        <source>Cups at {grams} g to the US cup, {density} g/mL.</source>
        <translation>Tassen mit {grams} g je US-Tasse, {density} g/mL.</translation>
    </message>
    <message>
        <source>Or {grams} of {salt}: the bag says which it is.</source>
        <translation>Oder {grams} {salt}: auf der Tüte steht, welches es ist.</translation>
    </message>
    <message>
        <source>Or {grams} of {salt}.</source>
        <translation>Oder {grams} {salt}.</translation>
    </message>
    <message>
        <source>Weighed before scouring; scoured it weighs about {least} to {most} g. Per cent here go by the weight before.</source>
        <translation>Vor dem Auskochen gewogen; ausgekocht wiegt er etwa {least} bis {most} g. Prozente gehen hier nach dem Gewicht davor.</translation>
    </message>
    <message>
        <source>Weighed after scouring; before it weighed about {least} to {most} g. Per cent here go by the weight after.</source>
        <translation>Nach dem Auskochen gewogen; davor wog er etwa {least} bis {most} g. Prozente gehen hier nach dem Gewicht danach.</translation>
    </message>
    <message>
        <source>about {span}</source>
        <translation>etwa {span}</translation>
    </message>
    <message>
        <source>Between {earliest} and {latest}.</source>
        <translation>Zwischen {earliest} und {latest}.</translation>
    </message>
    <message>
        <source>A heat balance of the wet surface; see “Sources”. Dry is observed, not assumed.</source>
        <translation>Eine Wärmebilanz der nassen Oberfläche; siehe „Woher die Zahlen sind“. Trocken wird gefühlt, nicht angenommen.</translation>
    </message>
    <message>
        <source>humidity of the room, %</source>
        <translation>Luftfeuchte des Raums, %</translation>
    </message>
    <message>
        <source>hours to dry</source>
        <translation>Stunden bis trocken</translation>
    </message>
    <message>
        <source>Hours to dry over the humidity of the room; at {humidity} % about {hours}.</source>
        <translation>Stunden bis trocken über der Luftfeuchte des Raums; bei {humidity} % etwa {hours}.</translation>
    </message>
    <message>
        <source>How long cloth dries</source>
        <translation>Wie lange Stoff trocknet</translation>
    </message>
    <message>
        <source>Hung free in a room, from how it was spun and what the air is like.</source>
        <translation>Frei im Raum aufgehängt, nach Schleudern und Luft.</translation>
    </message>
    <message>
        <source>Of the dry cloth: 150 g/m², 4.5 oz/yd², 16 momme.</source>
        <translation>Des trockenen Stoffs: 150 g/m², 4,5 oz/yd², 16 momme.</translation>
    </message>
    <message>
        <source>&amp;Spun</source>
        <translation>&amp;Geschleudert</translation>
    </message>
    <message>
        <source>hand, drip, 1200 rpm, or water weighed: 60 %.</source>
        <translation>hand, drip (tropfend), 1200 rpm, oder gewogenes Wasser: 60 %.</translation>
    </message>
    <message>
        <source>&amp;Heat of the room</source>
        <translation>&amp;Wärme des Raums</translation>
    </message>
    <message>
        <source>Near the cloth, from 0 to 45 °C.</source>
        <translation>Nahe am Stoff, von 0 bis 45 °C.</translation>
    </message>
    <message>
        <source>H&amp;umidity</source>
        <translation>&amp;Luftfeuchte</translation>
    </message>
    <message>
        <source>Near the cloth, not at the window.</source>
        <translation>Nahe am Stoff, nicht am Fenster.</translation>
    </message>
    <message>
        <source>&amp;Moving air</source>
        <translation>&amp;Bewegte Luft</translation>
    </message>
    <message>
        <source>still, room, fan, or metres a second.</source>
        <translation>still, room (Raum), fan (Lüfter), oder Meter je Sekunde.</translation>
    </message>
    <message>
        <source>Si&amp;des in the air</source>
        <translation>&amp;Seiten an der Luft</translation>
    </message>
    <message>
        <source>One where it lies or hangs on a wall.</source>
        <translation>Eine, wo er liegt oder an einer Wand hängt.</translation>
    </message>
    <message>
        <source>both sides</source>
        <translation>beide Seiten</translation>
    </message>
    <message>
        <source>one side</source>
        <translation>eine Seite</translation>
    </message>
    <message>
        <source>&amp;Fibre</source>
        <translation>&amp;Faser</translation>
    </message>
    <message>
        <source>How much water it keeps when it feels dry.</source>
        <translation>Wie viel Wasser sie hält, wenn sie sich trocken anfühlt.</translation>
    </message>
    <message>
        <source>{typed} cannot be read as {what}: a figure above nought, at most {most}.</source>
        <translation>{typed} kann nicht als {what} gelesen werden: eine Zahl über null, höchstens {most}.</translation>
    </message>
    <message>
        <source>a share</source>
        <translation>ein Anteil</translation>
    </message>
    <message>
        <source>a ratio</source>
        <translation>ein Verhältnis</translation>
    </message>
    <message>
        <source>about {share} % of its weight in water</source>
        <translation>etwa {share} % seines Gewichts an Wasser</translation>
    </message>
    <message>
        <source>These figures do not go together; look at each once more.</source>
        <translation>Diese Zahlen passen nicht zusammen; jede noch einmal ansehen.</translation>
    </message>
    <message>
        <source>Right to a fifth at best: beans differ, and so does the straining.</source>
        <translation>Bestenfalls auf ein Fünftel genau: Bohnen sind verschieden, das Abseihen auch.</translation>
    </message>
    <message>
        <source>Between {earliest} and {latest}; look after {look}.</source>
        <translation>Zwischen {earliest} und {latest}; nach {look} nachsehen.</translation>
    </message>
    <message>
        <source>Fresh water after {span}.</source>
        <translation>Frisches Wasser nach {span}.</translation>
    </message>
    <message>
        <source>The water may sour after {span}.</source>
        <translation>Das Wasser kann nach {span} sauer werden.</translation>
    </message>
    <message>
        <source>Peleg’s equation fitted to published soaks; souring: food rules. See “Sources”.</source>
        <translation>Pelegs Gleichung, an veröffentlichte Versuche angepasst; Säuern: Lebensmittelregeln. Siehe „Woher die Zahlen sind“.</translation>
    </message>
    <message>
        <source>hours</source>
        <translation>Stunden</translation>
    </message>
    <message>
        <source>times the dry weight</source>
        <translation>mal das Trockengewicht</translation>
    </message>
    <message>
        <source>Weight of the beans over {hours} hours at {celsius} °C; twice the dry weight after {span}.</source>
        <translation>Gewicht der Bohnen über {hours} Stunden bei {celsius} °C; das doppelte Trockengewicht nach {span}.</translation>
    </message>
    <message>
        <source>Water of the first grind: {litres}.</source>
        <translation>Wasser des ersten Mahlens: {litres}.</translation>
    </message>
    <message>
        <source>Soaked beans weigh 2.0 to 2.6 times the dry ones.</source>
        <translation>Eingeweichte Bohnen wiegen das 2,0- bis 2,6-Fache der trockenen.</translation>
    </message>
    <message>
        <source>{grams} g of dry beans to the litre, one part to {parts} of water.</source>
        <translation>{grams} g trockene Bohnen auf den Liter, ein Teil auf {parts} Wasser.</translation>
    </message>
    <message>
        <source>Below {parts} parts of water a part of the protein will not dissolve.</source>
        <translation>Unter {parts} Teilen Wasser löst sich ein Teil des Eiweißes nicht.</translation>
    </message>
    <message>
        <source>about {grams} g of protein a litre</source>
        <translation>etwa {grams} g Eiweiß im Liter</translation>
    </message>
    <message>
        <source>Protein of the bean: food tables; recovery: Yuwono and Susanto.</source>
        <translation>Eiweiß der Bohne: Nährwerttabellen; Ausbeute: Yuwono und Susanto.</translation>
    </message>
    <message>
        <source>Milk is kept between 0 and {most} °C.</source>
        <translation>Milch wird zwischen 0 und {most} °C aufbewahrt.</translation>
    </message>
    <message>
        <source>Smell it before it meets cloth; sour or thick milk goes away.</source>
        <translation>Riechen, bevor sie an den Stoff kommt; saure oder dicke Milch kommt weg.</translation>
    </message>
    <message>
        <source>A proposal, bracketed by food rules; no paper says it of raw milk as a binder.</source>
        <translation>Ein Vorschlag, durch Lebensmittelregeln eingegrenzt; von roher Milch als Bindemittel sagt es keine Arbeit.</translation>
    </message>
    <message>
        <source>Wet cloth weighs more than dry cloth.</source>
        <translation>Nasser Stoff wiegt mehr als trockener.</translation>
    </message>
    <message>
        <source>at most {grams} g of protein on 100 g of cloth</source>
        <translation>höchstens {grams} g Eiweiß auf 100 g Stoff</translation>
    </message>
    <message>
        <source>It holds {grams} of the bath, {share} % of its dry weight.</source>
        <translation>Er hält {grams} vom Bad, {share} % seines Trockengewichts.</translation>
    </message>
    <message>
        <source>What was only in the water between the threads can drip or wash away. Weigh the dry cloth to know what stayed.</source>
        <translation>Was nur im Wasser zwischen den Fäden war, kann abtropfen oder auswaschen. Den trockenen Stoff wiegen, um zu wissen, was blieb.</translation>
    </message>
    <message>
        <source>Plain proportion from the protein of the milk; see “The milk”.</source>
        <translation>Einfaches Verhältnis aus dem Eiweiß der Milch; siehe „Die Milch“.</translation>
    </message>
    <message>
        <source>{share} % heavier</source>
        <translation>{share} % schwerer</translation>
    </message>
    <message>
        <source>{share} % lighter</source>
        <translation>{share} % leichter</translation>
    </message>
    <message>
        <source>Weigh both times in the same air: cotton takes up about as much water from damp air as a coat of soy weighs.</source>
        <translation>Beide Male in gleicher Luft wiegen: Baumwolle nimmt aus feuchter Luft etwa so viel Wasser auf, wie ein Auftrag Soja wiegt.</translation>
    </message>
    <message>
        <source>Plain proportion.</source>
        <translation>Einfaches Verhältnis.</translation>
    </message>
    <message>
        <source>Dry &amp;beans</source>
        <translation>Trockene &amp;Bohnen</translation>
    </message>
    <message>
        <source>Before the soak.</source>
        <translation>Vor dem Einweichen.</translation>
    </message>
    <message>
        <source>&amp;Milk made of them</source>
        <translation>&amp;Milch daraus</translation>
    </message>
    <message>
        <source>All of it, with the thinning.</source>
        <translation>Alle, mit der Verdünnung.</translation>
    </message>
    <message>
        <source>How long beans soak</source>
        <translation>Wie lange Bohnen einweichen</translation>
    </message>
    <message>
        <source>From the heat of the water, in a room as warm.</source>
        <translation>Aus der Wärme des Wassers, in einem ebenso warmen Raum.</translation>
    </message>
    <message>
        <source>&amp;Water and room</source>
        <translation>&amp;Wasser und Raum</translation>
    </message>
    <message>
        <source>The water takes the room’s heat within an hour or two.</source>
        <translation>Das Wasser nimmt in ein, zwei Stunden die Wärme des Raums an.</translation>
    </message>
    <message>
        <source>Are the beans through?</source>
        <translation>Sind die Bohnen durch?</translation>
    </message>
    <message>
        <source>From their drained weight.</source>
        <translation>Aus ihrem abgetropften Gewicht.</translation>
    </message>
    <message>
        <source>&amp;Dry weight</source>
        <translation>&amp;Trockengewicht</translation>
    </message>
    <message>
        <source>D&amp;rained weight</source>
        <translation>&amp;Abgetropftes Gewicht</translation>
    </message>
    <message>
        <source>Drained and shaken, not dried off.</source>
        <translation>Abgetropft und geschüttelt, nicht abgetrocknet.</translation>
    </message>
    <message>
        <source>The milk</source>
        <translation>Die Milch</translation>
    </message>
    <message>
        <source>Its strength, and what of the beans is in it.</source>
        <translation>Ihre Stärke, und was von den Bohnen darin ist.</translation>
    </message>
    <message>
        <source>How long milk keeps</source>
        <translation>Wie lange Milch hält</translation>
    </message>
    <message>
        <source>Raw milk, covered, from when it was strained.</source>
        <translation>Rohe Milch, zugedeckt, vom Abseihen an.</translation>
    </message>
    <message>
        <source>&amp;Where it stands</source>
        <translation>&amp;Wo sie steht</translation>
    </message>
    <message>
        <source>The refrigerator is about 4 °C.</source>
        <translation>Der Kühlschrank hat etwa 4 °C.</translation>
    </message>
    <message>
        <source>What a coat leaves</source>
        <translation>Was ein Auftrag hinterlässt</translation>
    </message>
    <message>
        <source>Milk and protein that cloth carries into drying, from two weighings.</source>
        <translation>Milch und Eiweiß, die der Stoff ins Trocknen mitnimmt, aus zwei Wägungen.</translation>
    </message>
    <message>
        <source>&amp;Dry cloth</source>
        <translation>&amp;Trockener Stoff</translation>
    </message>
    <message>
        <source>Before the bath.</source>
        <translation>Vor dem Bad.</translation>
    </message>
    <message>
        <source>&amp;Spun cloth</source>
        <translation>&amp;Geschleuderter Stoff</translation>
    </message>
    <message>
        <source>As it goes to the line.</source>
        <translation>So wie er an die Leine geht.</translation>
    </message>
    <message>
        <source>Weight gained by coats</source>
        <translation>Gewicht, das die Aufträge brachten</translation>
    </message>
    <message>
        <source>What all coats together left, fully dry.</source>
        <translation>Was alle Aufträge zusammen hinterließen, ganz trocken.</translation>
    </message>
    <message>
        <source>Scoured and dry.</source>
        <translation>Gereinigt und trocken.</translation>
    </message>
    <message>
        <source>Coated and fully dry.</source>
        <translation>Behandelt und ganz trocken.</translation>
    </message>
    <message>
        <source>weight by area</source>
        <translation>Flächengewicht</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>volume</source>
        <translation>Volumen</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>{typed} names no quantity. Write a figure and its unit: 4.5 oz/yd², 3.5 yd, 1/4 cup, 70 F.</source>
        <translation>{typed} nennt keine Größe. Eine Zahl und ihre Einheit schreiben: 4.5 oz/yd², 3.5 yd, 1/4 cup, 70 F.</translation>
    </message>
    <message>
        <source>heat</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>This names no quantity.</source>
        <translation>Das nennt keine Größe.</translation>
    </message>
    <message>
        <source>Units by their definitions (NIST SP 811).</source>
        <translation>Einheiten nach ihren Festlegungen (NIST SP 811).</translation>
    </message>
    <message>
        <source>From one unit to the others</source>
        <translation>Von einer Einheit in die anderen</translation>
    </message>
    <message>
        <source>Any weight, volume, length, area, cloth or heat, in all units that are met.</source>
        <translation>Jedes Gewicht, Volumen, jede Länge, Fläche, jeder Stoff, jede Wärme in allen Einheiten, die vorkommen.</translation>
    </message>
    <message>
        <source>&amp;Quantity</source>
        <translation>&amp;Größe</translation>
    </message>
    <message>
        <source>A figure and its unit, mixed if you like: 3.5 yd, 1/4 cup, 70 F.</source>
        <translation>Eine Zahl und ihre Einheit, gern gemischt: 3.5 yd, 1/4 cup, 70 F.</translation>
    </message>
    <message>
        <source>Calculator — Studio Log</source>
        <translation>Rechner — Studio Log</translation>
    </message>
    <message>
        <source>Calculations</source>
        <translation>Rechnungen</translation>
    </message>
    <message>
        <source>Copy as &amp;text</source>
        <translation>Als &amp;Text kopieren</translation>
    </message>
    <message>
        <source>C&amp;lose</source>
        <translation>S&amp;chließen</translation>
    </message>
    <message>
        <source>Copied. Paste it where it is wanted.</source>
        <translation>Kopiert. Einfügen, wo es gebraucht wird.</translation>
    </message>
    <message>
        <source>Source: {source}</source>
        <translation>Quelle: {source}</translation>
    </message>
    <message>
        <source>What comes out</source>
        <translation>Was herauskommt</translation>
    </message>
    <message>
        <source>soaked</source>
        <translation>durchgeweicht</translation>
    </message>
    <message>
        <source>the water may sour after {at}</source>
        <translation>das Wasser kann ab {at} säuern</translation>
    </message>
    <message>
        <source>by its own weight likely dry {at}</source>
        <translation>nach seinem eigenen Gewicht wohl trocken {at}</translation>
    </message>
    <message>
        <source>dry</source>
        <translation>trocken</translation>
    </message>
    <message>
        <source>likely {what} {aim}, between {earliest} and {latest}</source>
        <translation>wohl {what} {aim}, zwischen {earliest} und {latest}</translation>
    </message>
    <message>
        <source>Typed {when}, not written down yet.</source>
        <translation>Getippt {when}, noch nicht aufgeschrieben.</translation>
    </message>
    <message>
        <source>Record the milk</source>
        <translation>Die Milch aufschreiben</translation>
    </message>
    <message>
        <source>Dry beans</source>
        <translation>Trockene Bohnen</translation>
    </message>
    <message>
        <source>Milk</source>
        <translation>Milch</translation>
    </message>
    <message>
        <source>cold: good for a further coat for 48 h</source>
        <translation>kalt: 48 h gut für einen weiteren Auftrag</translation>
    </message>
    <message>
        <source>at room heat: good for 4 h</source>
        <translation>bei Raumwärme: 4 h gut</translation>
    </message>
    <message>
        <source>Made at</source>
        <translation>Gemacht um</translation>
    </message>
    <message>
        <source>&amp;Record it</source>
        <translation>&amp;Aufschreiben</translation>
    </message>
    <message>
        <source>That makes {grams} g of dry beans a litre.</source>
        <translation>Das macht {grams} g trockene Bohnen je Liter.</translation>
    </message>
    <message>
        <source>Each coat then names its milk, and its life is watched.</source>
        <translation>Jeder Auftrag nennt dann seine Milch, und ihre Haltbarkeit wird bewacht.</translation>
    </message>
    <message>
        <source>&amp;Dry beans</source>
        <translation>&amp;Trockene Bohnen</translation>
    </message>
    <message>
        <source>&amp;Milk</source>
        <translation>&amp;Milch</translation>
    </message>
    <message>
        <source>&amp;Kept</source>
        <translation>Auf&amp;bewahrt</translation>
    </message>
    <message>
        <source>Made &amp;at</source>
        <translation>Gemacht &amp;um</translation>
    </message>
    <message>
        <source>Typed here before (Down)</source>
        <translation>Früher hier getippt (Pfeil nach unten)</translation>
    </message>
    <message>
        <source>Typed &amp;before</source>
        <translation>Früher geti&amp;ppt</translation>
    </message>
    <message>
        <source>The cure is a whole number of days, as in 90, or 12 weeks.</source>
        <translation>Die Reife ist eine ganze Zahl von Tagen, etwa 90, oder 12 weeks.</translation>
    </message>
    <message>
        <source>A cure lasts up to 3,650 days, as in 90.</source>
        <translation>Eine Reife dauert bis zu 3.650 Tage, etwa 90.</translation>
    </message>
    <message>
        <source>{n} day</source>
        <translation>{n} Tag</translation>
    </message>
    <message>
        <source>{what} is {span} late: of its pieces those of {lots} are not cured in time, the last on {day} at {hour}.</source>
        <translation>{what} kommt um {span} zu spät: von den Stücken reifen die von {lots} nicht rechtzeitig, das letzte am {day} um {hour}.</translation>
    </message>
    <message>
        <source>{what} is {span} late: it is over on {day} at {hour}.</source>
        <translation>{what} kommt um {span} zu spät: fertig ist es am {day} um {hour}.</translation>
    </message>
    <message>
        <source>{n} days</source>
        <translation>{n} Tage</translation>
    </message>
    <message>
        <source>Of what? Say a unit, as in 500 g or 0.5 L.</source>
        <translation>Wovon? Eine Einheit angeben, etwa 500 g oder 0.5 L.</translation>
    </message>
    <message>
        <source>Understood: {metric} = {us}</source>
        <translation>Verstanden: {metric} = {us}</translation>
    </message>
    <message>
        <source>No weight and no volume, such as 500 g, 1 lb 3 oz or 0.5 L.</source>
        <translation>Kein Gewicht und kein Volumen, etwa 500 g, 1 lb 3 oz oder 0.5 L.</translation>
    </message>
    <message>
        <source>A price is a figure, such as 12.50.</source>
        <translation>Ein Preis ist eine Zahl, etwa 12.50.</translation>
    </message>
    <message>
        <source>Understood: {price} for all of it</source>
        <translation>Verstanden: {price} für alles</translation>
    </message>
    <message>
        <source>A date is year, month and day, as in 2027-03-31.</source>
        <translation>Ein Datum ist Jahr, Monat und Tag, etwa 2027-03-31.</translation>
    </message>
    <message>
        <source>Understood: {day}</source>
        <translation>Verstanden: {day}</translation>
    </message>
    <message>
        <source>{title} is in the stock as {code}.</source>
        <translation>{title} ist als {code} im Vorrat.</translation>
    </message>
    <message>
        <source>{title}: bought.</source>
        <translation>{title}: gekauft.</translation>
    </message>
    <message>
        <source>{title}: drawn.</source>
        <translation>{title}: entnommen.</translation>
    </message>
    <message>
        <source>{title}: counted.</source>
        <translation>{title}: gezählt.</translation>
    </message>
    <message>
        <source>{title} is changed.</source>
        <translation>{title} ist geändert.</translation>
    </message>
    <message>
        <source>{code}: “{words}” is taken back.</source>
        <translation>{code}: „{words}“ ist zurückgenommen.</translation>
    </message>
    <message>
        <source>{code}: “{words}” stands again.</source>
        <translation>{code}: „{words}“ gilt wieder.</translation>
    </message>
    <message>
        <source>{price} a kilogram</source>
        <translation>{price} das Kilogramm</translation>
    </message>
    <message>
        <source>{price} a litre</source>
        <translation>{price} der Liter</translation>
    </message>
    <message>
        <source>kept no longer</source>
        <translation>nicht mehr geführt</translation>
    </message>
    <message>
        <source>more was used than was bought: count it</source>
        <translation>mehr verbraucht als gekauft: nachzählen</translation>
    </message>
    <message>
        <source>past its date, {day}</source>
        <translation>über dem Datum, {day}</translation>
    </message>
    <message>
        <source>low: buy again</source>
        <translation>wenig: nachkaufen</translation>
    </message>
    <message>
        <source>enough</source>
        <translation>genug</translation>
    </message>
    <message>
        <source>none there</source>
        <translation>keines da</translation>
    </message>
    <message>
        <source>{amount} for {lot}</source>
        <translation>{amount} für {lot}</translation>
    </message>
    <message>
        <source>taken in</source>
        <translation>aufgenommen</translation>
    </message>
    <message>
        <source>bought {amount}</source>
        <translation>gekauft {amount}</translation>
    </message>
    <message>
        <source>drawn by hand: {amount}</source>
        <translation>von Hand entnommen: {amount}</translation>
    </message>
    <message>
        <source>counted: {amount}</source>
        <translation>gezählt: {amount}</translation>
    </message>
    <message>
        <source>batch {batch}</source>
        <translation>Charge {batch}</translation>
    </message>
    <message>
        <source>for {price}</source>
        <translation>für {price}</translation>
    </message>
    <message>
        <source>{needed} for {lots}</source>
        <translation>{needed} für {lots}</translation>
    </message>
    <message>
        <source>{low} to keep</source>
        <translation>{low} als Vorrat</translation>
    </message>
    <message>
        <source>{there} there</source>
        <translation>{there} da</translation>
    </message>
    <message>
        <source>Materials so far: {total}</source>
        <translation>Material bisher: {total}</translation>
    </message>
    <message>
        <source>{words}; without a price: {titles}</source>
        <translation>{words}; ohne Preis: {titles}</translation>
    </message>
    <message>
        <source>Heed</source>
        <translation>Zu beachten</translation>
    </message>
    <message>
        <source>Material</source>
        <translation>Material</translation>
    </message>
    <message>
        <source>Hazard</source>
        <translation>Gefahr</translation>
    </message>
    <message>
        <source>Wear and air</source>
        <translation>Schutz und Luft</translation>
    </message>
    <message>
        <source>Store</source>
        <translation>Lagern</translation>
    </message>
    <message>
        <source>Pour away</source>
        <translation>Entsorgen</translation>
    </message>
    <message>
        <source>Dye vessels never go back to food. Keep all of it from children and pets.</source>
        <translation>Färbegefäße kommen nie wieder zum Essen. Alles von Kindern und Tieren fernhalten.</translation>
    </message>
    <message>
        <source>Known</source>
        <translation>Bekannt</translation>
    </message>
    <message>
        <source>Opinion</source>
        <translation>Meinung</translation>
    </message>
    <message>
        <source>There</source>
        <translation>Da</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Als Nächstes</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Fibre</source>
        <translation>Faser</translation>
    </message>
    <message>
        <source>Weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Cure age</source>
        <translation>Reifealter</translation>
    </message>
    <message>
        <source>Vessel</source>
        <translation>Gefäß</translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation>Regal</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>Nothing is in the stock yet. “New material…” takes in the first: soda ash, alum, beans. Steps that begin then draw on it, and the list of what to buy knows what is there.</source>
        <translation>Noch ist nichts im Vorrat. „Neues Material…“ nimmt das erste auf: Soda, Alaun, Bohnen. Schritte, die beginnen, entnehmen davon, und die Einkaufsliste weiß, was da ist.</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Material</translation>
    </message>
    <message>
        <source>The chosen material</source>
        <translation>Das gewählte Material</translation>
    </message>
    <message>
        <source>Methods call it {name}.</source>
        <translation>In Methoden heißt es {name}.</translation>
    </message>
    <message>
        <source>Batch {batch}.</source>
        <translation>Charge {batch}.</translation>
    </message>
    <message>
        <source>Drawn on by {lots}.</source>
        <translation>Entnommen von {lots}.</translation>
    </message>
    <message>
        <source>How much</source>
        <translation>Wie viel</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Nothing is to be bought for these days.</source>
        <translation>Für diese Tage ist nichts zu kaufen.</translation>
    </message>
    <message>
        <source> days ahead</source>
        <translation> Tage voraus</translation>
    </message>
    <message>
        <source>How many days ahead</source>
        <translation>Wie viele Tage voraus</translation>
    </message>
    <message>
        <source>What to buy</source>
        <translation>Was zu kaufen ist</translation>
    </message>
    <message>
        <source>&amp;For the steps that begin within</source>
        <translation>&amp;Für die Schritte, die beginnen binnen</translation>
    </message>
    <message>
        <source>&amp;Materials</source>
        <translation>&amp;Material</translation>
    </message>
    <message>
        <source>What to bu&amp;y</source>
        <translation>Was &amp;zu kaufen ist</translation>
    </message>
    <message>
        <source>&amp;Bought…</source>
        <translation>&amp;Gekauft…</translation>
    </message>
    <message>
        <source>&amp;Taken…</source>
        <translation>&amp;Entnommen…</translation>
    </message>
    <message>
        <source>&amp;Counted…</source>
        <translation>Ge&amp;zählt…</translation>
    </message>
    <message>
        <source>Stock — Studio Log</source>
        <translation>Vorrat — Studio Log</translation>
    </message>
    <message>
        <source>&amp;New material…</source>
        <translation>&amp;Neues Material…</translation>
    </message>
    <message>
        <source>Take b&amp;ack</source>
        <translation>Zu&amp;rücknehmen</translation>
    </message>
    <message>
        <source>&amp;Kept no longer</source>
        <translation>Nicht mehr &amp;führen</translation>
    </message>
    <message>
        <source>&amp;How much</source>
        <translation>&amp;Wie viel</translation>
    </message>
    <message>
        <source>&amp;Price</source>
        <translation>&amp;Preis</translation>
    </message>
    <message>
        <source>&amp;Batch</source>
        <translation>&amp;Charge</translation>
    </message>
    <message>
        <source>the supplier’s, if any</source>
        <translation>die des Lieferanten, falls bekannt</translation>
    </message>
    <message>
        <source>Best be&amp;fore</source>
        <translation>&amp;Haltbar bis</translation>
    </message>
    <message>
        <source>&amp;Note</source>
        <translation>&amp;Notiz</translation>
    </message>
    <message>
        <source>a note, if any</source>
        <translation>eine Notiz, wenn gewünscht</translation>
    </message>
    <message>
        <source>What &amp;methods call it</source>
        <translation>Wie &amp;Methoden es nennen</translation>
    </message>
    <message>
        <source>soda-ash; else by its name</source>
        <translation>soda-ash; sonst nach seinem Namen</translation>
    </message>
    <message>
        <source>What is t&amp;here</source>
        <translation>Was &amp;da ist</translation>
    </message>
    <message>
        <source>Buy again be&amp;low</source>
        <translation>Nachkaufen &amp;unter</translation>
    </message>
    <message>
        <source>Pl&amp;ace</source>
        <translation>&amp;Ort</translation>
    </message>
    <message>
        <source>shelf 2</source>
        <translation>Regal 2</translation>
    </message>
    <message>
        <source>New material</source>
        <translation>Neues Material</translation>
    </message>
    <message>
        <source>Bought: {title}</source>
        <translation>Gekauft: {title}</translation>
    </message>
    <message>
        <source>Taken by hand: {title}</source>
        <translation>Von Hand entnommen: {title}</translation>
    </message>
    <message>
        <source>Counted: {title}</source>
        <translation>Gezählt: {title}</translation>
    </message>
    <message>
        <source>&amp;Write it down</source>
        <translation>&amp;Aufschreiben</translation>
    </message>
    <message>
        <source>Type a note or a reading first.</source>
        <translation>Zuerst eine Notiz oder einen Messwert eingeben.</translation>
    </message>
    <message>
        <source>Fill in: {label}</source>
        <translation>Ausfüllen: {label}</translation>
    </message>
    <message>
        <source>{whole} from the first step to the last, {hands} by hand</source>
        <translation>{whole} vom ersten Schritt zum letzten, {hands} von Hand</translation>
    </message>
    <message>
        <source>{whole} from the first step to the last, {hands} by hand, what may be left out with it</source>
        <translation>{whole} vom ersten Schritt zum letzten, {hands} von Hand, samt dem, was wegbleiben darf</translation>
    </message>
    <message>
        <source>then {n} day of cure</source>
        <translation>dann {n} Tag Reife</translation>
    </message>
    <message>
        <source>then {n} days of cure</source>
        <translation>dann {n} Tage Reife</translation>
    </message>
    <message>
        <source>every {span}</source>
        <translation>alle {span}</translation>
    </message>
    <message>
        <source>then every {span}</source>
        <translation>dann alle {span}</translation>
    </message>
    <message>
        <source>at once</source>
        <translation>sofort</translation>
    </message>
    <message>
        <source>the step before</source>
        <translation>dem Schritt davor</translation>
    </message>
    <message>
        <source>within {span} of {step}</source>
        <translation>innerhalb von {span} nach {step}</translation>
    </message>
    <message>
        <source>not before {span} of {step}</source>
        <translation>nicht vor {span} nach {step}</translation>
    </message>
    <message>
        <source>after {span}</source>
        <translation>nach {span}</translation>
    </message>
    <message>
        <source>by the view of the cure</source>
        <translation>nach der Ansicht zur Reife</translation>
    </message>
    <message>
        <source>How soon</source>
        <translation>Wie bald</translation>
    </message>
    <message>
        <source>How long</source>
        <translation>Wie lange</translation>
    </message>
    <message>
        <source>By hand</source>
        <translation>Von Hand</translation>
    </message>
    <message>
        <source>Tend</source>
        <translation>Bewegen</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>If it waits</source>
        <translation>Wenn es wartet</translation>
    </message>
    <message>
        <source>{step} (may be left out)</source>
        <translation>{step} (darf wegbleiben)</translation>
    </message>
    <message>
        <source>{figure}, by the size of the cloth</source>
        <translation>{figure}, nach der Größe des Stoffs</translation>
    </message>
    <message>
        <source>Only in {method}: {steps}.</source>
        <translation>Nur in {method}: {steps}.</translation>
    </message>
    <message>
        <source>{step} lasts: {here} | {there}.</source>
        <translation>{step} dauert: {here} | {there}.</translation>
    </message>
    <message>
        <source>{step} comes: {here} | {there}.</source>
        <translation>{step} kommt: {here} | {there}.</translation>
    </message>
    <message>
        <source>{step} is tended: {here} | {there}.</source>
        <translation>{step} wird bewegt: {here} | {there}.</translation>
    </message>
    <message>
        <source>{step} takes: {here} | {there}.</source>
        <translation>{step} braucht: {here} | {there}.</translation>
    </message>
    <message>
        <source>nothing said</source>
        <translation>nichts gesagt</translation>
    </message>
    <message>
        <source>No search is kept yet. Type one, then keep it here.</source>
        <translation>Noch ist keine Suche aufbewahrt. Eine tippen, dann hier aufbewahren.</translation>
    </message>
    <message>
        <source>&amp;Keep this search</source>
        <translation>Diese Suche auf&amp;bewahren</translation>
    </message>
    <message>
        <source>Kept</source>
        <translation>Aufbewahrt</translation>
    </message>
    <message>
        <source>Kept searches</source>
        <translation>Aufbewahrte Suchen</translation>
    </message>
    <message>
        <source>Searches that are kept</source>
        <translation>Suchen, die aufbewahrt sind</translation>
    </message>
    <message>
        <source>&amp;Forget</source>
        <translation>&amp;Vergessen</translation>
    </message>
    <message>
        <source>&amp;Coats</source>
        <translation>&amp;Aufträge</translation>
    </message>
    <message>
        <source>&amp;Age of the cure</source>
        <translation>Alter der &amp;Reife</translation>
    </message>
    <message>
        <source>&amp;State</source>
        <translation>&amp;Zustand</translation>
    </message>
    <message>
        <source>Another: “{words}…”</source>
        <translation>Anderes: „{words}…“</translation>
    </message>
    <message>
        <source>&amp;Shelf or place: “at …”</source>
        <translation>&amp;Regal oder Ort: „at …“</translation>
    </message>
    <message>
        <source>Filter</source>
        <translation>Filter</translation>
    </message>
    <message>
        <source>Add a filter</source>
        <translation>Filter hinzufügen</translation>
    </message>
    <message>
        <source>Add a filter; the same words can be typed above</source>
        <translation>Einen Filter hinzufügen; dieselben Wörter lassen sich oben tippen</translation>
    </message>
    <message>
        <source>&amp;Begun</source>
        <translation>&amp;Begonnen</translation>
    </message>
    <message>
        <source>Live</source>
        <translation>Laufend</translation>
    </message>
    <message>
        <source>In work</source>
        <translation>In Arbeit</translation>
    </message>
    <message>
        <source>Curing</source>
        <translation>In Reife</translation>
    </message>
    <message>
        <source>Ready</source>
        <translation>Bereit</translation>
    </message>
    <message>
        <source>Planned</source>
        <translation>Geplant</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>The search would be longer than can be kept. It stays as it was; take a part away first.</source>
        <translation>Die Suche würde länger, als aufbewahrt werden kann. Sie bleibt, wie sie war; erst einen Teil wegnehmen.</translation>
    </message>
    <message>
        <source>Show: {state}, {n} lots</source>
        <translation>Zeigen: {state}, {n} Partien</translation>
    </message>
    <message>
        <source>Show: {state}</source>
        <translation>Zeigen: {state}</translation>
    </message>
    <message>
        <source>View</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Rows or table, and its columns</source>
        <translation>Zeilen oder Tabelle, und ihre Spalten</translation>
    </message>
    <message>
        <source>&amp;Rows</source>
        <translation>&amp;Zeilen</translation>
    </message>
    <message>
        <source>&amp;Table</source>
        <translation>&amp;Tabelle</translation>
    </message>
    <message>
        <source>&amp;Columns</source>
        <translation>&amp;Spalten</translation>
    </message>
    <message>
        <source>What needs &amp;hands first</source>
        <translation>Was &amp;Hände braucht, zuerst</translation>
    </message>
    <message>
        <source>By need</source>
        <translation>Nach Bedarf</translation>
    </message>
    <message>
        <source>&amp;Newest first</source>
        <translation>&amp;Neueste zuerst</translation>
    </message>
    <message>
        <source>By newest</source>
        <translation>Nach Neuheit</translation>
    </message>
    <message>
        <source>&amp;Code</source>
        <translation>&amp;Kürzel</translation>
    </message>
    <message>
        <source>By code</source>
        <translation>Nach Kürzel</translation>
    </message>
    <message>
        <source>N&amp;ame</source>
        <translation>N&amp;ame</translation>
    </message>
    <message>
        <source>By name</source>
        <translation>Nach Name</translation>
    </message>
    <message>
        <source>&amp;Weight, heaviest first</source>
        <translation>&amp;Gewicht, schwerste zuerst</translation>
    </message>
    <message>
        <source>By weight</source>
        <translation>Nach Gewicht</translation>
    </message>
    <message>
        <source>C&amp;oats, most first</source>
        <translation>A&amp;ufträge, meiste zuerst</translation>
    </message>
    <message>
        <source>By coats</source>
        <translation>Nach Aufträgen</translation>
    </message>
    <message>
        <source>Age of the cu&amp;re, oldest first</source>
        <translation>Alter der &amp;Reife, älteste zuerst</translation>
    </message>
    <message>
        <source>By age</source>
        <translation>Nach Alter</translation>
    </message>
    <message>
        <source>Rea&amp;dy soonest</source>
        <translation>Am ehesten &amp;bereit</translation>
    </message>
    <message>
        <source>By ready</source>
        <translation>Nach Bereitschaft</translation>
    </message>
    <message>
        <source>Be&amp;gun last, first</source>
        <translation>Zuletzt &amp;begonnene zuerst</translation>
    </message>
    <message>
        <source>By begun</source>
        <translation>Nach Beginn</translation>
    </message>
    <message>
        <source>By fibre</source>
        <translation>Nach Faser</translation>
    </message>
    <message>
        <source>&amp;Shelf</source>
        <translation>Re&amp;gal</translation>
    </message>
    <message>
        <source>By shelf</source>
        <translation>Nach Regal</translation>
    </message>
    <message>
        <source>&amp;Backwards</source>
        <translation>&amp;Umgekehrt</translation>
    </message>
    <message>
        <source>Order: {order}, backwards</source>
        <translation>Reihenfolge: {order}, umgekehrt</translation>
    </message>
    <message>
        <source>Order: {order}</source>
        <translation>Reihenfolge: {order}</translation>
    </message>
    <message>
        <source>Any word that was typed, and: cotton · over 400 g · soyed twice · cured over 30 days · curing · since June · at shelf 3 · by weight. In quotation marks it is only looked for as words.</source>
        <translation>Jedes getippte Wort, und auf Englisch: cotton · over 400 g · soyed twice · cured over 30 days · curing · since June · at shelf 3 · by weight. In Anführungszeichen wird nur nach den Wörtern gesucht.</translation>
    </message>
    <message>
        <source>Find a lot or cloth — or scan a tag</source>
        <translation>Partie oder Stoff suchen — oder Etikett scannen</translation>
    </message>
    <message>
        <source>Find a lot</source>
        <translation>Partie suchen</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
    <message>
        <source>Take away: {part}</source>
        <translation>Wegnehmen: {part}</translation>
    </message>
    <message>
        <source>Understood: {part}. Press it to take it away.</source>
        <translation>Verstanden: {part}. Drücken nimmt es weg.</translation>
    </message>
    <message>
        <source>Lots as a table</source>
        <translation>Partien als Tabelle</translation>
    </message>
    <message>
        <source>No lot is under way. Make the first one, and its steps stand here.</source>
        <translation>Keine Partie läuft. Die erste anlegen, und ihre Schritte stehen hier.</translation>
    </message>
    <message>
        <source>No lot is in work just now.</source>
        <translation>Gerade ist keine Partie in Arbeit.</translation>
    </message>
    <message>
        <source>No lot is curing just now.</source>
        <translation>Gerade reift keine Partie.</translation>
    </message>
    <message>
        <source>No lot is ready just now.</source>
        <translation>Gerade ist keine Partie bereit.</translation>
    </message>
    <message>
        <source>No lot is planned.</source>
        <translation>Keine Partie ist geplant.</translation>
    </message>
    <message>
        <source>No lots yet. Make the first one, and its steps stand here.</source>
        <translation>Noch keine Partien. Die erste anlegen, und ihre Schritte stehen hier.</translation>
    </message>
    <message>
        <source>There is no lot {lot} in this studio.</source>
        <translation>Eine Partie {lot} gibt es in dieser Werkstatt nicht.</translation>
    </message>
    <message>
        <source>Nothing found for “{find}”.</source>
        <translation>Nichts gefunden für „{find}“.</translation>
    </message>
    <message>
        <source>{n} of {of} steps done</source>
        <translation>{n} von {of} Schritten getan</translation>
    </message>
    <message>
        <source>Open the page of the method</source>
        <translation>Die Seite der Methode öffnen</translation>
    </message>
    <message>
        <source>Fields</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>{amount} on 100 g of cloth</source>
        <translation>{amount} auf 100 g Stoff</translation>
    </message>
    <message>
        <source>Take it out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>No method has these words.</source>
        <translation>Keine Methode hat diese Wörter.</translation>
    </message>
    <message>
        <source>Find a method</source>
        <translation>Methode suchen</translation>
    </message>
    <message>
        <source>version {n}</source>
        <translation>Fassung {n}</translation>
    </message>
    <message>
        <source>Full bar: at least so long. Hatched: it may end here; the upright line is the aim. Stitches: tending. Pleats: a long rest, folded.</source>
        <translation>Voller Balken: mindestens so lange. Schraffiert: hier darf es enden; der senkrechte Strich ist das Ziel. Stiche: bewegen. Falten: lange Ruhe, gefaltet.</translation>
    </message>
    <message>
        <source>The supplier’s safety data sheet and local rules come first; this page does not replace them.</source>
        <translation>Das Sicherheitsdatenblatt des Lieferanten und die örtlichen Regeln gehen vor; diese Seite ersetzt sie nicht.</translation>
    </message>
    <message>
        <source>Steps, with the amounts for {grams} of cloth</source>
        <translation>Schritte, mit den Mengen für {grams} Stoff</translation>
    </message>
    <message>
        <source>How long it cures: schools disagree</source>
        <translation>Wie lange es reift: die Schulen sind uneins</translation>
    </message>
    <message>
        <source>Where the figures come from</source>
        <translation>Woher die Zahlen kommen</translation>
    </message>
    <message>
        <source>These two are the same in steps, times, tending and amounts.</source>
        <translation>Diese beiden sind gleich in Schritten, Zeiten, Bewegen und Mengen.</translation>
    </message>
    <message>
        <source>Goes in:</source>
        <translation>Hinein kommt:</translation>
    </message>
    <message>
        <source>Caution:</source>
        <translation>Vorsicht:</translation>
    </message>
    <message>
        <source>School: {school}. Version {n} ({slug}).</source>
        <translation>Schule: {school}. Fassung {n} ({slug}).</translation>
    </message>
    <message>
        <source>Method: {title}</source>
        <translation>Methode: {title}</translation>
    </message>
    <message>
        <source>{title}, version {n}</source>
        <translation>{title}, Fassung {n}</translation>
    </message>
    <message>
        <source>The printer did not take the page. Nothing was printed. See that it is on, or save the page as a PDF.</source>
        <translation>Der Drucker nahm die Seite nicht an. Nichts wurde gedruckt. Nachsehen, ob er an ist, oder die Seite als PDF speichern.</translation>
    </message>
    <message>
        <source>page {n} of {count}</source>
        <translation>Seite {n} von {count}</translation>
    </message>
    <message>
        <source>This paper would have more than {count} pages. Nothing was made. Export the studio instead: the folder holds everything.</source>
        <translation>Dieses Papier hätte mehr als {count} Seiten. Nichts wurde gemacht. Gib stattdessen die Werkstatt als Ordner aus: er enthält alles.</translation>
    </message>
    <message>
        <source>The drawing waits until the times are mended.</source>
        <translation>Die Zeichnung wartet, bis die Zeiten berichtigt sind.</translation>
    </message>
    <message>
        <source>{n} thing to mend</source>
        <translation>{n} Sache zu berichtigen</translation>
    </message>
    <message>
        <source>{n} things to mend</source>
        <translation>{n} Sachen zu berichtigen</translation>
    </message>
    <message>
        <source>No name</source>
        <translation>Kein Name</translation>
    </message>
    <message>
        <source>Drawing of the method</source>
        <translation>Zeichnung der Methode</translation>
    </message>
    <message>
        <source>Go to what is to &amp;mend</source>
        <translation>Zum Berichtigen ge&amp;hen</translation>
    </message>
    <message>
        <source>No printer is set up on this computer. Nothing was printed; save the page as a PDF.</source>
        <translation>Auf diesem Rechner ist kein Drucker eingerichtet. Nichts wurde gedruckt; die Seite als PDF speichern.</translation>
    </message>
    <message>
        <source>{title} is sent to {printer}.</source>
        <translation>{title} ist an {printer} geschickt.</translation>
    </message>
    <message>
        <source>Steps of the method</source>
        <translation>Schritte der Methode</translation>
    </message>
    <message>
        <source>&amp;Add</source>
        <translation>&amp;Hinzufügen</translation>
    </message>
    <message>
        <source>Add a step after this one</source>
        <translation>Einen Schritt nach diesem hinzufügen</translation>
    </message>
    <message>
        <source>&amp;Repeat</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>Repeat these steps after them</source>
        <translation>Diese Schritte danach wiederholen</translation>
    </message>
    <message>
        <source>&amp;Up</source>
        <translation>&amp;Auf</translation>
    </message>
    <message>
        <source>Move these steps up</source>
        <translation>Diese Schritte nach oben</translation>
    </message>
    <message>
        <source>&amp;Down</source>
        <translation>A&amp;b</translation>
    </message>
    <message>
        <source>Move these steps down</source>
        <translation>Diese Schritte nach unten</translation>
    </message>
    <message>
        <source>Ta&amp;ke out</source>
        <translation>Heraus&amp;nehmen</translation>
    </message>
    <message>
        <source>Take these steps out</source>
        <translation>Diese Schritte herausnehmen</translation>
    </message>
    <message>
        <source>{act} ({key} in the list)</source>
        <translation>{act} ({key} in der Liste)</translation>
    </message>
    <message>
        <source>Views of the cure</source>
        <translation>Ansichten zur Reife</translation>
    </message>
    <message>
        <source>{n} to mend</source>
        <translation>{n} zu berichtigen</translation>
    </message>
    <message>
        <source>cotton, linen, hemp: plant fibre</source>
        <translation>Baumwolle, Leinen, Hanf: Pflanzenfaser</translation>
    </message>
    <message>
        <source>wool, silk: animal fibre</source>
        <translation>Wolle, Seide: Tierfaser</translation>
    </message>
    <message>
        <source>Earthy and muted lies at the top, bright at the bottom.</source>
        <translation>Erdig und gedämpft steht oben, leuchtend unten.</translation>
    </message>
    <message>
        <source>Wool and silk are protein themselves: soy adds little to them.</source>
        <translation>Wolle und Seide sind selbst Eiweiß: Soja bringt ihnen wenig.</translation>
    </message>
    <message>
        <source>Soy is protein: it gives cellulose something that tannins and dyes hold to.</source>
        <translation>Soja ist Eiweiß: es gibt der Pflanzenfaser etwas, woran Gerbstoffe und Farben haften.</translation>
    </message>
    <message>
        <source>{dye} bears tannin, and is expected to gain most from it.</source>
        <translation>{dye} enthält Gerbstoff und gewinnt davon voraussichtlich am meisten.</translation>
    </message>
    <message>
        <source>{dye} wants a mordant: on soy alone it stays pale and washes out sooner.</source>
        <translation>{dye} braucht eine Beize: auf Soja allein bleibt er blass und wäscht sich eher aus.</translation>
    </message>
    <message>
        <source>Soy alone</source>
        <translation>Soja allein</translation>
    </message>
    <message>
        <source>Earthy and muted; even, if the soy is even.</source>
        <translation>Erdig und gedämpft; gleichmäßig, wenn das Soja gleichmäßig ist.</translation>
    </message>
    <message>
        <source>That the hue turns muted is what dyers say; no measured hues were found.</source>
        <translation>Dass der Ton gedämpft wird, sagen Färber; gemessene Farbtöne fanden sich nicht.</translation>
    </message>
    <message>
        <source>How long the cure must be is in dispute: from none to six months. Try it.</source>
        <translation>Wie lange die Reife dauern muss, ist umstritten: von gar nicht bis sechs Monate. Ausprobieren.</translation>
    </message>
    <message>
        <source>Soy, then alum</source>
        <translation>Soja, dann Alaun</translation>
    </message>
    <message>
        <source>Between the two: deeper than soy alone, softer than alum alone.</source>
        <translation>Zwischen beiden: tiefer als Soja allein, weicher als Alaun allein.</translation>
    </message>
    <message>
        <source>Alkali lifts soy: the mordant has to stay sour to neutral, without soda.</source>
        <translation>Alkali löst Soja ab: die Beize muss sauer bis neutral bleiben, ohne Soda.</translation>
    </message>
    <message>
        <source>On alum {dye} gives: {hue}.</source>
        <translation>Auf Alaun gibt {dye}: {hue}.</translation>
    </message>
    <message>
        <source>No printed schedule was found for it: dye a swatch before the cloth.</source>
        <translation>Eine gedruckte Vorschrift fand sich nicht: erst eine Probe färben, dann den Stoff.</translation>
    </message>
    <message>
        <source>Plant fibre takes alum up with a tannin before it, or as acetate.</source>
        <translation>Pflanzenfaser nimmt Alaun mit einem Gerbstoff davor auf, oder als Acetat.</translation>
    </message>
    <message>
        <source>Wool and silk take alum up by themselves, with cream of tartar.</source>
        <translation>Wolle und Seide nehmen Alaun von selbst auf, mit Weinstein.</translation>
    </message>
    <message>
        <source>Alum alone</source>
        <translation>Alaun allein</translation>
    </message>
    <message>
        <source>Bright and clear, as bright as the dye can be.</source>
        <translation>Leuchtend und klar, so leuchtend, wie der Farbstoff sein kann.</translation>
    </message>
    <message>
        <source>That alum is brighter than soy is what dyers say; it is likely, and not measured.</source>
        <translation>Dass Alaun leuchtender ist als Soja, sagen Färber; es ist wahrscheinlich und nicht gemessen.</translation>
    </message>
    <message>
        <source>The vat</source>
        <translation>Die Küpe</translation>
    </message>
    <message>
        <source>Blue, deeper with every dip.</source>
        <translation>Blau, tiefer mit jedem Zug.</translation>
    </message>
    <message>
        <source>{dye} holds by the vat itself: neither soy nor alum holds it.</source>
        <translation>{dye} hält durch die Küpe selbst: weder Soja noch Alaun hält ihn.</translation>
    </message>
    <message>
        <source>Soy under indigo is said to take the dips more evenly; no test was found.</source>
        <translation>Soja unter Indigo soll die Züge gleichmäßiger annehmen; ein Versuch fand sich nicht.</translation>
    </message>
    <message>
        <source>Here the vat decides, not the mordant.</source>
        <translation>Hier entscheidet die Küpe, nicht die Beize.</translation>
    </message>
    <message>
        <source>In soy milk</source>
        <translation>In Sojamilch</translation>
    </message>
    <message>
        <source>The pigment’s own colour, matt.</source>
        <translation>Die eigene Farbe des Pigments, matt.</translation>
    </message>
    <message>
        <source>{dye} dissolves in no bath: soy holds it on the cloth as a binder.</source>
        <translation>{dye} löst sich in keinem Bad: Soja hält ihn als Bindemittel auf dem Stoff.</translation>
    </message>
    <message>
        <source>An over-coat is said to hold it better against rubbing; test it.</source>
        <translation>Ein Überzug soll ihn besser gegen Abrieb halten; prüfen.</translation>
    </message>
    <message>
        <source>A pigment is painted on, with soy as its binder.</source>
        <translation>Ein Pigment wird aufgemalt, mit Soja als Bindemittel.</translation>
    </message>
    <message>
        <source>Iron afterwards: {hue}. A little, or it harms the cloth.</source>
        <translation>Eisen danach: {hue}. Wenig, sonst schadet es dem Stoff.</translation>
    </message>
    <message>
        <source> to </source>
        <translation> bis </translation>
    </message>
    <message>
        <source>To light it is of class {classes} of A to C: a judgement, no grade.</source>
        <translation>Gegen Licht ist er von Klasse {classes} von A bis C: ein Urteil, keine Note.</translation>
    </message>
    <message>
        <source>(taken back)</source>
        <translation>(zurückgenommen)</translation>
    </message>
    <message>
        <source>(corrected by entry {number})</source>
        <translation>(berichtigt durch Eintrag {number})</translation>
    </message>
    <message>
        <source>Journal</source>
        <translation>Journal</translation>
    </message>
    <message>
        <source>now:  {words}</source>
        <translation>jetzt:  {words}</translation>
    </message>
    <message>
        <source>{moment}, {span} left</source>
        <translation>{moment}, noch {span}</translation>
    </message>
    <message>
        <source>A new lot takes the pieces of both and carries on. Both codes end in it.</source>
        <translation>Eine neue Partie nimmt die Stücke beider und geht weiter. Beide Nummern enden in ihr.</translation>
    </message>
    <message>
        <source>No other lot follows this method and stands at the same step now. Type a code to see what keeps it apart.</source>
        <translation>Keine andere Partie folgt dieser Methode und steht jetzt am selben Schritt. Eine Nummer eingeben, um zu sehen, was sie trennt.</translation>
    </message>
    <message>
        <source>What will become of them stands here once a lot is chosen.</source>
        <translation>Was aus ihnen wird, steht hier, sobald eine Partie gewählt ist.</translation>
    </message>
    <message>
        <source>Choose the lot that joins it, or type its code.</source>
        <translation>Die Partie wählen, die dazukommt, oder ihre Nummer eingeben.</translation>
    </message>
    <message>
        <source>Join lots</source>
        <translation>Partien vereinigen</translation>
    </message>
    <message>
        <source>Lots that can join it</source>
        <translation>Partien, die dazukommen können</translation>
    </message>
    <message>
        <source>&amp;Join them</source>
        <translation>&amp;Vereinigen</translation>
    </message>
    <message>
        <source>The joined lot needs a name.</source>
        <translation>Die vereinigte Partie braucht einen Namen.</translation>
    </message>
    <message>
        <source>&amp;Join them all the same</source>
        <translation>Trotzdem &amp;vereinigen</translation>
    </message>
    <message>
        <source>&amp;Other lot</source>
        <translation>&amp;Andere Partie</translation>
    </message>
    <message>
        <source>Join {code} {name} with another lot</source>
        <translation>{code} {name} mit einer anderen Partie vereinigen</translation>
    </message>
    <message>
        <source>What becomes of them</source>
        <translation>Was aus ihnen wird</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Skip…</source>
        <translation>Auslassen…</translation>
    </message>
    <message>
        <source>Note…</source>
        <translation>Notiz…</translation>
    </message>
    <message>
        <source> ({weighed} scour)</source>
        <translation> ({weighed} scour)</translation>
    </message>
    <message>
        <source>Milk {code} (for {others}), good for a further coat until {good}</source>
        <translation>Milch {code} (für {others}), gut für einen weiteren Auftrag bis {good}</translation>
    </message>
    <message>
        <source>joined from</source>
        <translation>vereinigt aus</translation>
    </message>
    <message>
        <source>split from</source>
        <translation>geteilt aus</translation>
    </message>
    <message>
        <source>split into {join}</source>
        <translation>geteilt in {join}</translation>
    </message>
    <message>
        <source>joined into {joined_into}</source>
        <translation>zusammengelegt in {joined_into}</translation>
    </message>
    <message>
        <source>, frozen when the cure ended</source>
        <translation>, eingefroren, als die Reife endete</translation>
    </message>
    <message>
        <source>{name} {moment} (day {day})</source>
        <translation>{name} {moment} (Tag {day})</translation>
    </message>
    <message>
        <source>Fully dry {since}, cure age {days:.1f} d{frozen}. {marks}.</source>
        <translation>Ganz trocken {since}, Reifealter {days:.1f} d{frozen}. {marks}.</translation>
    </message>
    <message>
        <source>at once, {text}</source>
        <translation>sofort, {text}</translation>
    </message>
    <message>
        <source>within {span}{behind}, {text}</source>
        <translation>binnen {span}{behind}, {text}</translation>
    </message>
    <message>
        <source>{title} to be dry</source>
        <translation>{title}, bis es trocken ist</translation>
    </message>
    <message>
        <source>waits for: {what}</source>
        <translation>wartet auf: {what}</translation>
    </message>
    <message>
        <source>skipped: {why}</source>
        <translation>ausgelassen: {why}</translation>
    </message>
    <message>
        <source>{start} → now</source>
        <translation>{start} → jetzt</translation>
    </message>
    <message>
        <source>best ended</source>
        <translation>am besten beendet</translation>
    </message>
    <message>
        <source>best begun</source>
        <translation>am besten begonnen</translation>
    </message>
    <message>
        <source>{limit}: passed by {span}</source>
        <translation>{limit}: um {span} überschritten</translation>
    </message>
    <message>
        <source>milk {milk}</source>
        <translation>Milch {milk}</translation>
    </message>
    <message>
        <source>{done} {count}×, last {last}</source>
        <translation>{done} {count}×, zuletzt {last}</translation>
    </message>
    <message>
        <source>still damp {moment}</source>
        <translation>noch feucht {moment}</translation>
    </message>
    <message>
        <source>Repeat</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Use now</source>
        <translation>Jetzt verwenden</translation>
    </message>
    <message>
        <source> entry {target}</source>
        <translation> Eintrag {target}</translation>
    </message>
    <message>
        <source>, with a photo</source>
        <translation>, mit einem Foto</translation>
    </message>
    <message>
        <source>split off {codes}</source>
        <translation>abgeteilt {codes}</translation>
    </message>
    <message>
        <source>split from {codes}</source>
        <translation>abgeteilt von {codes}</translation>
    </message>
    <message>
        <source>joined into {codes}</source>
        <translation>zusammengelegt in {codes}</translation>
    </message>
    <message>
        <source>joined from {codes}</source>
        <translation>zusammengelegt aus {codes}</translation>
    </message>
    <message>
        <source>split into</source>
        <translation>geteilt in</translation>
    </message>
    <message>
        <source>joined into</source>
        <translation>vereinigt zu</translation>
    </message>
    <message>
        <source>{how} {code}: open it</source>
        <translation>{how} {code}: öffnen</translation>
    </message>
    <message>
        <source>and {count} more</source>
        <translation>und {count} weitere</translation>
    </message>
    <message>
        <source>the whole lot</source>
        <translation>die ganze Partie</translation>
    </message>
    <message>
        <source>The photo belongs to</source>
        <translation>Das Foto gehört zu</translation>
    </message>
    <message>
        <source>Note to the photo</source>
        <translation>Notiz zum Foto</translation>
    </message>
    <message>
        <source>&amp;Keep this photo</source>
        <translation>Dieses Foto &amp;behalten</translation>
    </message>
    <message>
        <source>Lea&amp;ve it</source>
        <translation>&amp;So lassen</translation>
    </message>
    <message>
        <source>{name}, for {code}</source>
        <translation>{name}, für {code}</translation>
    </message>
    <message>
        <source>taken {when}: use that time</source>
        <translation>aufgenommen {when}: diese Zeit nehmen</translation>
    </message>
    <message>
        <source>Pictures (*.jpg *.jpeg *.png *.webp);;All files (*)</source>
        <translation>Bilder (*.jpg *.jpeg *.png *.webp);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>or drop it anywhere on this page, or paste it</source>
        <translation>oder irgendwo auf diese Seite ziehen, oder einfügen</translation>
    </message>
    <message>
        <source>No photos yet. They are kept beside the log, unchanged.</source>
        <translation>Noch keine Fotos. Sie werden unverändert neben dem Logbuch aufbewahrt.</translation>
    </message>
    <message>
        <source>Add a &amp;photo…</source>
        <translation>Ein &amp;Foto hinzufügen…</translation>
    </message>
    <message>
        <source>Up to {count} photos can be added at once. None was taken.</source>
        <translation>Bis zu {count} Fotos lassen sich auf einmal hinzufügen. Keines wurde übernommen.</translation>
    </message>
    <message>
        <source>Photos of the lot</source>
        <translation>Fotos der Partie</translation>
    </message>
    <message>
        <source>The file of this photo is not in the studio&apos;s folder any more: {file}</source>
        <translation>Die Datei dieses Fotos liegt nicht mehr im Ordner der Werkstatt: {file}</translation>
    </message>
    <message>
        <source>&amp;All photos</source>
        <translation>&amp;Alle Fotos</translation>
    </message>
    <message>
        <source>The photo before</source>
        <translation>Das Foto davor</translation>
    </message>
    <message>
        <source>The next photo</source>
        <translation>Das nächste Foto</translation>
    </message>
    <message>
        <source>&amp;Take this photo back</source>
        <translation>Dieses Foto &amp;zurücknehmen</translation>
    </message>
    <message>
        <source>the file
is missing</source>
        <translation>die Datei
fehlt</translation>
    </message>
    <message>
        <source>When it happened</source>
        <translation>Wann es war</translation>
    </message>
    <message>
        <source>Drag pieces across, or choose them and press Enter or the arrow towards the other pile.</source>
        <translation>Stücke hinüberziehen, oder wählen und die Eingabetaste oder den Pfeil zum anderen Stapel drücken.</translation>
    </message>
    <message>
        <source>Pieces that stay</source>
        <translation>Stücke, die bleiben</translation>
    </message>
    <message>
        <source>Pieces that leave</source>
        <translation>Stücke, die gehen</translation>
    </message>
    <message>
        <source>&amp;Leave →</source>
        <translation>&amp;Geht →</translation>
    </message>
    <message>
        <source>The chosen pieces leave</source>
        <translation>Die gewählten Stücke gehen</translation>
    </message>
    <message>
        <source>← Sta&amp;y</source>
        <translation>← Blei&amp;bt</translation>
    </message>
    <message>
        <source>The chosen pieces stay</source>
        <translation>Die gewählten Stücke bleiben</translation>
    </message>
    <message>
        <source>Stay ({n})</source>
        <translation>Bleiben ({n})</translation>
    </message>
    <message>
        <source>Leave ({n})</source>
        <translation>Gehen ({n})</translation>
    </message>
    <message>
        <source>The joined lot needs a name. Nothing was joined.</source>
        <translation>Die vereinigte Partie braucht einen Namen. Nichts wurde vereinigt.</translation>
    </message>
    <message>
        <source>{doubts} Join them all the same?</source>
        <translation>{doubts} Trotzdem vereinigen?</translation>
    </message>
    <message>
        <source>{code} {name} is joined from {codes}.</source>
        <translation>{code} {name} ist vereinigt aus {codes}.</translation>
    </message>
    <message>
        <source>The tags of {codes} still hang on the cloth. Print one for {code}.</source>
        <translation>Die Etiketten von {codes} hängen noch am Stoff. Eines für {code} drucken.</translation>
    </message>
    <message>
        <source>A lot may have {most} pieces; these have {n}. Nothing was joined.</source>
        <translation>Eine Partie darf {most} Stücke haben; diese haben {n}. Nichts wurde vereinigt.</translation>
    </message>
    <message>
        <source>A lot weighs up to 500 kg. Nothing was joined; leave them apart.</source>
        <translation>Eine Partie wiegt bis zu 500 kg. Nichts wurde vereinigt; die Partien getrennt lassen.</translation>
    </message>
    <message>
        <source>{code} has been worked on since it was joined: entry {number} ({act}) stands on it. Take that back first. Nothing was changed.</source>
        <translation>An {code} wurde seit der Vereinigung gearbeitet: Eintrag {number} ({act}) steht darauf. Den zuerst zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{codes} stand again; {code} is taken back.</source>
        <translation>{codes} bestehen wieder; {code} ist zurückgenommen.</translation>
    </message>
    <message>
        <source>cure age in days, log scale</source>
        <translation>Reifealter in Tagen, logarithmisch</translation>
    </message>
    <message>
        <source>arm</source>
        <translation>Glied</translation>
    </message>
    <message>
        <source>{n} piece</source>
        <translation>{n} Stück</translation>
    </message>
    <message>
        <source>no</source>
        <translation>null</translation>
    </message>
    <message>
        <source>one</source>
        <translation>eins</translation>
    </message>
    <message>
        <source>two</source>
        <translation>zwei</translation>
    </message>
    <message>
        <source>three</source>
        <translation>drei</translation>
    </message>
    <message>
        <source>four</source>
        <translation>vier</translation>
    </message>
    <message>
        <source>five</source>
        <translation>fünf</translation>
    </message>
    <message>
        <source>six</source>
        <translation>sechs</translation>
    </message>
    <message>
        <source>seven</source>
        <translation>sieben</translation>
    </message>
    <message>
        <source>eight</source>
        <translation>acht</translation>
    </message>
    <message>
        <source>nine</source>
        <translation>neun</translation>
    </message>
    <message>
        <source>ten</source>
        <translation>zehn</translation>
    </message>
    <message>
        <source>eleven</source>
        <translation>elf</translation>
    </message>
    <message>
        <source>twelve</source>
        <translation>zwölf</translation>
    </message>
    <message>
        <source>{n} pieces</source>
        <translation>{n} Stücke</translation>
    </message>
    <message>
        <source>no pieces</source>
        <translation>kein Stück</translation>
    </message>
    <message>
        <source>one piece</source>
        <translation>ein Stück</translation>
    </message>
    <message>
        <source>no days</source>
        <translation>keinen Tag</translation>
    </message>
    <message>
        <source>one day</source>
        <translation>einen Tag</translation>
    </message>
    <message>
        <source>no minutes</source>
        <translation>keine Minute</translation>
    </message>
    <message>
        <source>one minute</source>
        <translation>eine Minute</translation>
    </message>
    <message>
        <source>{n} minutes</source>
        <translation>{n} Minuten</translation>
    </message>
    <message>
        <source>no burners</source>
        <translation>keine Flamme</translation>
    </message>
    <message>
        <source>one burner</source>
        <translation>eine Flamme</translation>
    </message>
    <message>
        <source>no pairs of hands</source>
        <translation>kein Händepaar</translation>
    </message>
    <message>
        <source>one pair of hands</source>
        <translation>ein Händepaar</translation>
    </message>
    <message>
        <source>{n} pairs of hands</source>
        <translation>{n} Händepaare</translation>
    </message>
    <message>
        <source>{weekday} {date}</source>
        <translation>{weekday} {date}</translation>
    </message>
    <message>
        <source>{n} hours</source>
        <translation>{n} Stunden</translation>
    </message>
    <message>
        <source>{count}, {measure} against age.</source>
        <translation>{count}, {measure} gegen das Alter.</translation>
    </message>
    <message>
        <source>The line goes from {low} at {first} d to {high} at {last} d.</source>
        <translation>Die Gerade geht von {low} bei {first} d bis {high} bei {last} d.</translation>
    </message>
    <message>
        <source>A new lot of {pieces}, {weight}, which carries on from {code}.</source>
        <translation>Eine neue Partie: {pieces}, {weight}, die {code} weiterführt.</translation>
    </message>
    <message>
        <source>{codes} end in it. What was written of them stays, and each shows the other.</source>
        <translation>{codes} enden in ihr. Was von ihnen aufgeschrieben wurde, bleibt, und jede zeigt die andere.</translation>
    </message>
    <message>
        <source>Ready {when}.</source>
        <translation>Reif {when}.</translation>
    </message>
    <message>
        <source>Best ended {when}.</source>
        <translation>Am besten beendet {when}.</translation>
    </message>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>1 day</source>
        <translation>1 Tag</translation>
    </message>
    <message>
        <source>{days} days</source>
        <translation>{days} Tage</translation>
    </message>
    <message>
        <source>fold it</source>
        <translation>zu falten</translation>
    </message>
    <message>
        <source>open it</source>
        <translation>zu öffnen</translation>
    </message>
    <message>
        <source>{days} in which nobody is needed. Click or press Enter to {act}.</source>
        <translation>{days}, in denen niemand gebraucht wird. Klick oder Eingabetaste, um sie {act}.</translation>
    </message>
    <message>
        <source> Now: {join}.</source>
        <translation> Jetzt: {join}.</translation>
    </message>
    <message>
        <source>{count} short steps: {titles}. Zoom in to see them apart.</source>
        <translation>{count} kurze Schritte: {titles}. Vergrößern, um sie einzeln zu sehen.</translation>
    </message>
    <message>
        <source>No later: {limit_words}.</source>
        <translation>Nicht später: {limit_words}.</translation>
    </message>
    <message>
        <source>No earlier than {at}.</source>
        <translation>Nicht früher als {at}.</translation>
    </message>
    <message>
        <source>{title} ends</source>
        <translation>{title} endet</translation>
    </message>
    <message>
        <source>1 step moves with it</source>
        <translation>1 Schritt rückt mit</translation>
    </message>
    <message>
        <source>{others} steps move with it</source>
        <translation>{others} Schritte rücken mit</translation>
    </message>
    <message>
        <source>In quiet hours ({quiet}).</source>
        <translation>In der Ruhezeit ({quiet}).</translation>
    </message>
    <message>
        <source>where it was</source>
        <translation>wo es war</translation>
    </message>
    <message>
        <source>ready {now} instead of {before}</source>
        <translation>fertig {now} statt {before}</translation>
    </message>
    <message>
        <source>{title} would then fall in quiet hours ({words}).</source>
        <translation>{title} fiele dann in die Ruhezeit ({words}).</translation>
    </message>
    <message>
        <source>{count} meet</source>
        <translation>{count} treffen sich</translation>
    </message>
    <message>
        <source>{wanted:g} of {limit:g}</source>
        <translation>{wanted:g} von {limit:g}</translation>
    </message>
    <message>
        <source>{wanted} of {had}</source>
        <translation>{wanted} von {had}</translation>
    </message>
    <message>
        <source>{who} meet in {title}, {when}: it holds one lot at a time.</source>
        <translation>{who} treffen sich in {title}, {when}: es fasst eine Partie auf einmal.</translation>
    </message>
    <message>
        <source>{who} want heat {when}: {wanted:g} pots, {note}.</source>
        <translation>{who} brauchen Wärme {when}: {wanted:g} Töpfe, {note}.</translation>
    </message>
    <message>
        <source>{who} want {wanted} of the drying line {when}: {note} there are, {short} too few.</source>
        <translation>{who} brauchen {wanted} der Trockenleine {when}: {note} gibt es, {short} zu wenig.</translation>
    </message>
    <message>
        <source>: length not known</source>
        <translation>: Länge nicht bekannt</translation>
    </message>
    <message>
        <source>in {title}</source>
        <translation>in {title}</translation>
    </message>
    <message>
        <source>on the drying line</source>
        <translation>auf der Trockenleine</translation>
    </message>
    <message>
        <source>takes a burner</source>
        <translation>braucht eine Flamme</translation>
    </message>
    <message>
        <source>in a vessel without a name; F2 names it</source>
        <translation>in einem Gefäß ohne Namen; F2 benennt es</translation>
    </message>
    <message>
        <source>{code} {lot} — {title}, step {step}, {place}{much}, {when}.</source>
        <translation>{code} {lot} — {title}, Schritt {step}, {place}{much}, {when}.</translation>
    </message>
    <message>
        <source>Now: {who}.</source>
        <translation>Jetzt: {who}.</translation>
    </message>
    <message>
        <source>Free now.</source>
        <translation>Jetzt frei.</translation>
    </message>
    <message>
        <source>{first}, {second} and {rest} more lots</source>
        <translation>{first}, {second} und {rest} weitere Partien</translation>
    </message>
    <message>
        <source>{start} to {moment}</source>
        <translation>{start} bis {moment}</translation>
    </message>
    <message>
        <source>paint sinks in best before it</source>
        <translation>davor dringt Farbe am besten ein</translation>
    </message>
    <message>
        <source>from here on paint sinks in less well</source>
        <translation>ab hier dringt Farbe weniger gut ein</translation>
    </message>
    <message>
        <source>by the view that was chosen for this lot</source>
        <translation>nach der Ansicht, die für diese Partie gewählt wurde</translation>
    </message>
    <message>
        <source>{code} {name} — {mark} day {day}, {when}: {means}.</source>
        <translation>{code} {name} — {mark} Tag {day}, {when}: {means}.</translation>
    </message>
    <message>
        <source>This cannot be moved. A planned step can be moved while it is ahead, and the end of one that runs; not what is done, nor what begins at once with the step before.</source>
        <translation>Das kann nicht verschoben werden. Ein geplanter Schritt kann verschoben werden, solange er aussteht, und das Ende eines laufenden; nicht, was fertig ist, noch was sofort mit dem Schritt davor beginnt.</translation>
    </message>
    <message>
        <source>fold {label}</source>
        <translation>Falte {label}</translation>
    </message>
    <message>
        <source>Legend</source>
        <translation>Zeichenerklärung</translation>
    </message>
    <message>
        <source>dyed: done</source>
        <translation>gefärbt: fertig</translation>
    </message>
    <message>
        <source>may end here</source>
        <translation>darf hier enden</translation>
    </message>
    <message>
        <source>as planned</source>
        <translation>wie geplant</translation>
    </message>
    <message>
        <source>quiet hours</source>
        <translation>Ruhezeit</translation>
    </message>
    <message>
        <source>workshop closed</source>
        <translation>Werkstatt geschlossen</translation>
    </message>
    <message>
        <source>lots meet</source>
        <translation>Partien treffen sich</translation>
    </message>
    <message>
        <source>The printer did not take the sheet. Nothing was printed. See that it is on, or save the sheet as a picture.</source>
        <translation>Der Drucker nahm das Blatt nicht an. Nichts wurde gedruckt. Nachsehen, ob er an ist, oder das Blatt als Bild speichern.</translation>
    </message>
    <message>
        <source>as of {whole_moment}</source>
        <translation>Stand {whole_moment}</translation>
    </message>
    <message>
        <source>the first {count} of {rows} rows</source>
        <translation>die ersten {count} von {rows} Zeilen</translation>
    </message>
    <message>
        <source>page {number} of {count}</source>
        <translation>Seite {number} von {count}</translation>
    </message>
    <message>
        <source>Now. Click or press N to find it again.</source>
        <translation>Jetzt. Ein Klick oder N findet es wieder.</translation>
    </message>
    <message>
        <source>Quiet hours, {at} to {at2}: only what spoils may ring. </source>
        <translation>Ruhezeit, {at} bis {at2}: nur was verdirbt, darf klingeln. </translation>
    </message>
    <message>
        <source>The workshop is closed, {at} to {at2}. </source>
        <translation>Die Werkstatt ist geschlossen, {at} bis {at2}. </translation>
    </message>
    <message>
        <source>Pleats: stretches in which nobody is needed</source>
        <translation>Falten: Strecken, in denen niemand gebraucht wird</translation>
    </message>
    <message>
        <source>{words}. The others stand in the list of lots.</source>
        <translation>{words}. Die anderen stehen in der Liste der Partien.</translation>
    </message>
    <message>
        <source>No lots are in work. Start a lot, and its steps appear here, hour by hour.</source>
        <translation>Keine Partie ist in Arbeit. Eine Partie beginnen, und ihre Schritte erscheinen hier, Stunde um Stunde.</translation>
    </message>
    <message>
        <source>{shown:,} of {every:,} lots: those that need hands first</source>
        <translation>{shown:,} von {every:,} Partien: zuerst die, die Hände brauchen</translation>
    </message>
    <message>
        <source>length unknown</source>
        <translation>Länge unbekannt</translation>
    </message>
    <message>
        <source>with buttons</source>
        <translation>mit Knöpfen</translation>
    </message>
    <message>
        <source>without buttons</source>
        <translation>ohne Knöpfe</translation>
    </message>
    <message>
        <source>, titles only</source>
        <translation>, nur Titel</translation>
    </message>
    <message>
        <source>desktop notices work: {name} answers, {able}</source>
        <translation>Schreibtisch-Hinweise gehen: {name} antwortet, {able}</translation>
    </message>
    <message>
        <source>desktop notices: not asked yet</source>
        <translation>Schreibtisch-Hinweise: noch nicht gefragt</translation>
    </message>
    <message>
        <source>desktop notices are sent through plyer; nothing tells if they are seen</source>
        <translation>Schreibtisch-Hinweise gehen über plyer; ob sie gesehen werden, sagt nichts</translation>
    </message>
    <message>
        <source>desktop notices are off: the service answers with an error; ringing here only</source>
        <translation>Schreibtisch-Hinweise sind aus: der Dienst antwortet mit einem Fehler; es klingelt nur hier</translation>
    </message>
    <message>
        <source>desktop notices are off: no service answers; ringing here only</source>
        <translation>Schreibtisch-Hinweise sind aus: kein Dienst antwortet; es klingelt nur hier</translation>
    </message>
    <message>
        <source>copy kept {day}</source>
        <translation>Kopie behalten {day}</translation>
    </message>
    <message>
        <source>copy kept today</source>
        <translation>Kopie heute behalten</translation>
    </message>
    <message>
        <source>no copy could be kept today: {refusal}</source>
        <translation>heute konnte keine Kopie behalten werden: {refusal}</translation>
    </message>
    <message>
        <source>A copy is kept.</source>
        <translation>Eine Kopie ist aufgehoben.</translation>
    </message>
    <message>
        <source>A copy of the studio is in {file}.</source>
        <translation>Eine Kopie der Werkstatt liegt in {file}.</translation>
    </message>
    <message>
        <source>Its photo lies beside it.</source>
        <translation>Ihr Foto liegt daneben.</translation>
    </message>
    <message>
        <source>Its {n} photos lie beside it.</source>
        <translation>Ihre {n} Fotos liegen daneben.</translation>
    </message>
    <message>
        <source>{told} Put this copy back?</source>
        <translation>{told} Diese Kopie zurücklegen?</translation>
    </message>
    <message>
        <source>The studio is as it was in {file}.</source>
        <translation>Die Werkstatt ist, wie sie in {file} war.</translation>
    </message>
    <message>
        <source> What was here before is kept: {file}.</source>
        <translation> Was vorher hier war, ist aufgehoben: {file}.</translation>
    </message>
    <message>
        <source>The copy holds {there}.</source>
        <translation>In der Kopie: {there}.</translation>
    </message>
    <message>
        <source>What is here now cannot be read; it is kept as it is.</source>
        <translation>Was jetzt hier ist, lässt sich nicht lesen; es wird aufgehoben, wie es ist.</translation>
    </message>
    <message>
        <source>The studio here holds {here}.</source>
        <translation>In der Werkstatt hier: {here}.</translation>
    </message>
    <message>
        <source>Entries written since would be gone of {codes}.</source>
        <translation>Seither Geschriebenes ginge verloren bei {codes}.</translation>
    </message>
    <message>
        <source>Not in the copy, and gone with it: {codes}.</source>
        <translation>Nicht in der Kopie und danach fort: {codes}.</translation>
    </message>
    <message>
        <source>Written differently here and there: {codes}.</source>
        <translation>Hier und dort verschieden geschrieben: {codes}.</translation>
    </message>
    <message>
        <source>The copy has further entries of {codes}.</source>
        <translation>Die Kopie hat weitere Einträge zu {codes}.</translation>
    </message>
    <message>
        <source>In the copy alone, and back with it: {codes}.</source>
        <translation>Nur in der Kopie und danach wieder da: {codes}.</translation>
    </message>
    <message>
        <source>Both hold the same journal.</source>
        <translation>In beiden steht dasselbe Tagebuch.</translation>
    </message>
    <message>
        <source>1 photo lies neither here nor beside the copy.</source>
        <translation>1 Foto liegt weder hier noch neben der Kopie.</translation>
    </message>
    <message>
        <source>{n} photos lie neither here nor beside the copy.</source>
        <translation>{n} Fotos liegen weder hier noch neben der Kopie.</translation>
    </message>
    <message>
        <source>What is here now is kept among the copies.</source>
        <translation>Was jetzt hier ist, wird bei den Kopien aufgehoben.</translation>
    </message>
    <message>
        <source>{n} lot</source>
        <translation>{n} Partie</translation>
    </message>
    <message>
        <source>{n} lots</source>
        <translation>{n} Partien</translation>
    </message>
    <message>
        <source>{n} entry</source>
        <translation>{n} Eintrag</translation>
    </message>
    <message>
        <source>{n:,} entries</source>
        <translation>{n:,} Einträge</translation>
    </message>
    <message>
        <source>{lots} and {entries}</source>
        <translation>{lots} und {entries}</translation>
    </message>
    <message>
        <source>{lots} and {entries}, the last of {last}</source>
        <translation>{lots} und {entries}, der letzte von {last}</translation>
    </message>
    <message>
        <source>{named} and {more} more</source>
        <translation>{named} und {more} weitere</translation>
    </message>
    <message>
        <source>The place is kept.</source>
        <translation>Der Ort ist gemerkt.</translation>
    </message>
    <message>
        <source>Choose a lot at the left, and its steps stand here.</source>
        <translation>Links eine Partie wählen, dann stehen hier ihre Schritte.</translation>
    </message>
    <message>
        <source>Chan&amp;ge…</source>
        <translation>Ä&amp;ndern…</translation>
    </message>
    <message>
        <source>Split…</source>
        <translation>Teilen…</translation>
    </message>
    <message>
        <source>Join…</source>
        <translation>Vereinigen…</translation>
    </message>
    <message>
        <source>Go on…</source>
        <translation>Weiter…</translation>
    </message>
    <message>
        <source>Print tag</source>
        <translation>Etikett drucken</translation>
    </message>
    <message>
        <source>Stop…</source>
        <translation>Abbrechen…</translation>
    </message>
    <message>
        <source>P&amp;hotos</source>
        <translation>F&amp;otos</translation>
    </message>
    <message>
        <source>&amp;Steps</source>
        <translation>&amp;Schritte</translation>
    </message>
    <message>
        <source>&amp;Journal</source>
        <translation>&amp;Journal</translation>
    </message>
    <message>
        <source>The chosen lot</source>
        <translation>Die gewählte Partie</translation>
    </message>
    <message>
        <source>Why does the lot stop here?</source>
        <translation>Warum endet die Partie hier?</translation>
    </message>
    <message>
        <source>{step}: planned for when?</source>
        <translation>{step}: für wann geplant?</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Actual, or when</source>
        <translation>Wirklich, oder wann</translation>
    </message>
    <message>
        <source>Amounts and readings</source>
        <translation>Mengen und Messwerte</translation>
    </message>
    <message>
        <source>{step} — another coat, if wanted</source>
        <translation>{step} — ein weiterer Auftrag, wenn gewünscht</translation>
    </message>
    <message>
        <source>{step} — if wanted</source>
        <translation>{step} — wenn gewünscht</translation>
    </message>
    <message>
        <source>Step {title}, {state}</source>
        <translation>Schritt {title}, {state}</translation>
    </message>
    <message>
        <source>planned {when}</source>
        <translation>geplant {when}</translation>
    </message>
    <message>
        <source> of {after}</source>
        <translation> nach {after}</translation>
    </message>
    <message>
        <source>{title}: within {span}{behind}</source>
        <translation>{title}: binnen {span}{behind}</translation>
    </message>
    <message>
        <source>its time</source>
        <translation>seine Zeit</translation>
    </message>
    <message>
        <source>{title}: no longer than {longest}</source>
        <translation>{title}: nicht länger als {longest}</translation>
    </message>
    <message>
        <source>Warm and feed</source>
        <translation>Wärmen und füttern:</translation>
    </message>
    <message>
        <source>Feed</source>
        <translation>Füttern:</translation>
    </message>
    <message>
        <source>Make ready</source>
        <translation>Bereitmachen:</translation>
    </message>
    <message>
        <source>Its next use is planned for {at}.</source>
        <translation>Sein nächster Einsatz ist geplant für {at}.</translation>
    </message>
    <message>
        <source> Warm it to {heat} °C.</source>
        <translation> Auf {heat} °C wärmen.</translation>
    </message>
    <message>
        <source>A vat that idles cools, loses its pH and goes blue; cloth comes out of it pale.</source>
        <translation>Eine Küpe, die ruht, kühlt ab, verliert ihren pH und wird blau; Stoff kommt blass heraus.</translation>
    </message>
    <message>
        <source>{kilos} kg of cloth through it since {day}; uses: {count}.</source>
        <translation>{kilos} kg Stoff hindurch seit {day}; Einsätze: {count}.</translation>
    </message>
    <message>
        <source>Refresh</source>
        <translation>Auffrischen:</translation>
    </message>
    <message>
        <source>A spent bath fixes or colours cloth unevenly.</source>
        <translation>Ein verbrauchtes Bad fixiert oder färbt ungleich.</translation>
    </message>
    <message>
        <source>Made or refreshed {day}; such a bath ferments or moulds after about {days} days.</source>
        <translation>Angesetzt oder aufgefrischt {day}; ein solches Bad gärt oder schimmelt nach etwa {days} Tagen.</translation>
    </message>
    <message>
        <source>Use up, skim or simmer</source>
        <translation>Aufbrauchen, abschöpfen oder aufkochen:</translation>
    </message>
    <message>
        <source>Mould harms the lungs: pour a mouldy bath away.</source>
        <translation>Schimmel schadet der Lunge: ein schimmliges Bad weggießen.</translation>
    </message>
    <message>
        <source>a cooler vat idles: its pH falls and it goes blue</source>
        <translation>kühler ruht die Küpe: ihr pH fällt, und sie wird blau</translation>
    </message>
    <message>
        <source>on cellulose a vat wants pH 10 to 11 and over</source>
        <translation>auf Zellulose braucht eine Küpe pH 10 bis 11 und mehr</translation>
    </message>
    <message>
        <source>chalk bath</source>
        <translation>Kreidebad</translation>
    </message>
    <message>
        <source>Pour it away and make it anew: 50 g of chalk to 5 L, warm.</source>
        <translation>Weggießen und neu ansetzen: 50 g Kreide auf 5 L, warm.</translation>
    </message>
    <message>
        <source>bran bath</source>
        <translation>Kleiebad</translation>
    </message>
    <message>
        <source>Pour it away and make it anew: 100 g of bran to 5 L, warm, stood for half an hour.</source>
        <translation>Weggießen und neu ansetzen: 100 g Kleie auf 5 L, warm, eine halbe Stunde gestanden.</translation>
    </message>
    <message>
        <source>alum bath</source>
        <translation>Alaunbad</translation>
    </message>
    <message>
        <source>Make it anew: it has been recharged often enough.</source>
        <translation>Neu ansetzen: es wurde oft genug ergänzt.</translation>
    </message>
    <message>
        <source>on cellulose alum wants hot tap water and no cooking</source>
        <translation>auf Zellulose braucht Alaun heißes Leitungswasser und kein Kochen</translation>
    </message>
    <message>
        <source>Recharge it with half of the first alum before it is used again.</source>
        <translation>Vor dem nächsten Einsatz mit der Hälfte des ersten Alauns ergänzen.</translation>
    </message>
    <message>
        <source>aluminium acetate bath</source>
        <translation>Aluminiumacetatbad</translation>
    </message>
    <message>
        <source>hotter, acetate breaks down before it is in the cloth</source>
        <translation>heißer zerfällt das Acetat, bevor es im Stoff ist</translation>
    </message>
    <message>
        <source>aluminium triformate bath</source>
        <translation>Aluminiumtriformiatbad</translation>
    </message>
    <message>
        <source>Recharge it with 20 g of triformate to each litre filled up to the mark.</source>
        <translation>Mit 20 g Triformiat auf jeden Liter ergänzen, der bis zur Marke nachgefüllt wird.</translation>
    </message>
    <message>
        <source>tannin bath</source>
        <translation>Gerbstoffbad</translation>
    </message>
    <message>
        <source>tannin wants hot tap water</source>
        <translation>Gerbstoff braucht heißes Leitungswasser</translation>
    </message>
    <message>
        <source>Recharge it with half of the first tannin before it is used again.</source>
        <translation>Vor dem nächsten Einsatz mit der Hälfte des ersten Gerbstoffs ergänzen.</translation>
    </message>
    <message>
        <source>iron bath</source>
        <translation>Eisenbad</translation>
    </message>
    <message>
        <source>hotter, iron makes the cloth tender</source>
        <translation>heißer macht Eisen den Stoff mürbe</translation>
    </message>
    <message>
        <source>dye bath</source>
        <translation>Farbbad</translation>
    </message>
    <message>
        <source>indigo fructose vat</source>
        <translation>Indigoküpe mit Fruktose</translation>
    </message>
    <message>
        <source>indigo henna vat</source>
        <translation>Indigoküpe mit Henna</translation>
    </message>
    <message>
        <source>indigo fruit vat</source>
        <translation>Indigoküpe mit Früchten</translation>
    </message>
    <message>
        <source>indigo iron vat</source>
        <translation>Indigoküpe mit Eisen</translation>
    </message>
    <message>
        <source>an iron vat works at pH 11 to 13</source>
        <translation>eine Eisenküpe arbeitet bei pH 11 bis 13</translation>
    </message>
    <message>
        <source>indigo madder and bran vat</source>
        <translation>Indigoküpe mit Krapp und Kleie</translation>
    </message>
    <message>
        <source>bath</source>
        <translation>Bad</translation>
    </message>
    <message>
        <source>{typed} cannot be the heat of a bath: it lies between 0 and 105 °C. Nothing was changed; write 122 F where °F is meant.</source>
        <translation>{typed} kann nicht die Wärme eines Bades sein: sie liegt zwischen 0 und 105 °C. Nichts wurde geändert; wo °F gemeint ist, 122 F schreiben.</translation>
    </message>
    <message>
        <source>{typed} is no pH: a figure from 0 to 14, as in 10.5. Nothing was changed.</source>
        <translation>{typed} ist kein pH: eine Zahl von 0 bis 14, etwa 10,5. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{text} is no bath&apos;s code, such as B26-001. Nothing was changed.</source>
        <translation>{text} ist keine Nummer eines Bades, etwa B26-001. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>There is no such bath. `bath list` shows every one.</source>
        <translation>Ein solches Bad gibt es nicht. `bath list` zeigt alle.</translation>
    </message>
    <message>
        <source>The journal of {code} does not read. Nothing was changed; restore a copy.</source>
        <translation>Das Tagebuch von {code} lässt sich nicht lesen. Nichts wurde geändert; eine Kopie wiederherstellen.</translation>
    </message>
    <message>
        <source>{act} is nothing that is done to a bath.</source>
        <translation>{act} ist nichts, was mit einem Bad geschieht.</translation>
    </message>
    <message>
        <source>{code} was made {made}: nothing can have been done to it before. Nothing was changed; look at the time.</source>
        <translation>{code} wurde {made} angesetzt: vorher kann nichts damit geschehen sein. Nichts wurde geändert; die Zeit ansehen.</translation>
    </message>
    <message>
        <source>{code} is finished: {act} cannot follow. Nothing was changed; `bath set {code} --not-finished` opens it again.</source>
        <translation>{code} ist zu Ende: {act} kann nicht folgen. Nichts wurde geändert; `bath set {code} --not-finished` öffnet es wieder.</translation>
    </message>
    <message>
        <source>There is no bath {code}. Nothing was changed; `bath list` shows them.</source>
        <translation>Ein Bad {code} gibt es nicht. Nichts wurde geändert; `bath list` zeigt sie.</translation>
    </message>
    <message>
        <source>This has to be filled in.</source>
        <translation>Das muss ausgefüllt werden.</translation>
    </message>
    <message>
        <source>{code}, not in work</source>
        <translation>{code}, nicht in Arbeit</translation>
    </message>
    <message>
        <source>Understood: {words}</source>
        <translation>Verstanden: {words}</translation>
    </message>
    <message>
        <source>“{part}” is no lot’s code, such as 26-031.</source>
        <translation>„{part}“ ist keine Nummer einer Partie, etwa 26-031.</translation>
    </message>
    <message>
        <source>Diary</source>
        <translation>Tagebuch</translation>
    </message>
    <message>
        <source>Used by {lots}.</source>
        <translation>Gebraucht von {lots}.</translation>
    </message>
    <message>
        <source>Care: {said}.</source>
        <translation>Vorsicht: {said}.</translation>
    </message>
    <message>
        <source>&amp;Withdraw the plan</source>
        <translation>Plan &amp;zurückziehen</translation>
    </message>
    <message>
        <source>F&amp;inished</source>
        <translation>Zu En&amp;de</translation>
    </message>
    <message>
        <source>&amp;Not finished after all</source>
        <translation>Doch &amp;nicht zu Ende</translation>
    </message>
    <message>
        <source>{words} (taken back)</source>
        <translation>{words} (zurückgenommen)</translation>
    </message>
    <message>
        <source>… and {rest} earlier; `bath show` lists all.</source>
        <translation>… und {rest} frühere; `bath show` zeigt alle.</translation>
    </message>
    <message>
        <source>Its steps end here and nothing rings for it any more. Why does it stop?</source>
        <translation>Ihre Schritte enden hier, und nichts klingelt mehr für sie. Warum wird sie angehalten?</translation>
    </message>
    <message>
        <source>Stop {code}</source>
        <translation>{code} anhalten</translation>
    </message>
    <message>
        <source>the readings</source>
        <translation>die Messwerte</translation>
    </message>
    <message>
        <source>{name} is there twice. Name one of them, as in “rinse: 6”.</source>
        <translation>{name} steht zweimal da. Einem davon einen Namen geben, etwa „rinse: 6“.</translation>
    </message>
    <message>
        <source>An entry takes {count} readings. Use a second one.</source>
        <translation>Ein Eintrag nimmt {count} Messwerte auf. Einen zweiten Eintrag machen.</translation>
    </message>
    <message>
        <source>{typed} has no value. Write name: value, as in “smell: sweet”.</source>
        <translation>{typed} hat keinen Wert. Name: Wert schreiben, etwa „smell: sweet“.</translation>
    </message>
    <message>
        <source>{typed} is long for a name. Write the rest as a note.</source>
        <translation>{typed} ist lang für einen Namen. Den Rest als Notiz schreiben.</translation>
    </message>
    <message>
        <source>{typed} of what? Write pH 6.8, 71 F, 160 g, or name: value.</source>
        <translation>{typed} wovon? pH 6.8, 71 F, 160 g oder Name: Wert schreiben.</translation>
    </message>
    <message>
        <source>no unit typed</source>
        <translation>ohne Einheit getippt</translation>
    </message>
    <message>
        <source>A pH of {value}? The scale goes from 0 to 14.</source>
        <translation>Ein pH von {value}? Die Skala reicht von 0 bis 14.</translation>
    </message>
    <message>
        <source>A weight of {weight}? Nothing weighs so little.</source>
        <translation>Ein Gewicht von {weight}? So wenig wiegt nichts.</translation>
    </message>
    <message>
        <source>{weight}? That is over half a tonne.</source>
        <translation>{weight}? Das ist mehr als eine halbe Tonne.</translation>
    </message>
    <message>
        <source>{heat}? That is far below freezing.</source>
        <translation>{heat}? Das liegt weit unter dem Gefrierpunkt.</translation>
    </message>
    <message>
        <source>A bath of {heat}? Water boils at 100 °C.</source>
        <translation>Ein Bad von {heat}? Wasser siedet bei 100 °C.</translation>
    </message>
    <message>
        <source>Or was it °F?</source>
        <translation>Oder war es °F?</translation>
    </message>
    <message>
        <source>open {hours}</source>
        <translation>offen {hours}</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>geschlossen</translation>
    </message>
    <message>
        <source>{hours}: {why}</source>
        <translation>{hours}: {why}</translation>
    </message>
    <message>
        <source>en_US</source>
        <translation>de</translation>
    </message>
    <message>
        <source>No holidays are known of “{place}”; none is counted.</source>
        <translation>Von „{place}“ sind keine Feiertage bekannt; keiner wird gezählt.</translation>
    </message>
    <message>
        <source>Holidays of {place} are known from {since} to {until}; outside it none is counted.</source>
        <translation>Feiertage von {place} sind von {since} bis {until} bekannt; davor und danach wird keiner gezählt.</translation>
    </message>
    <message>
        <source>Nothing can be drawn: the program was started without its drawing part. No file was written; call the command by itself.</source>
        <translation>Nichts lässt sich zeichnen: das Programm wurde ohne seinen Zeichenteil gestartet. Keine Datei wurde geschrieben; rufe den Befehl für sich auf.</translation>
    </message>
    <message>
        <source>No font was found on this computer, so paper would have no words. Nothing was printed. Install a font such as DejaVu Sans and try again.</source>
        <translation>Auf diesem Rechner wurde keine Schrift gefunden, Papier hätte also keine Wörter. Nichts wurde gedruckt. Installiere eine Schrift wie DejaVu Sans und versuche es noch einmal.</translation>
    </message>
    <message>
        <source>The printer or file did not take the pages. Nothing was printed. See that it is on, or save them as a PDF.</source>
        <translation>Drucker oder Datei nahmen die Seiten nicht an. Nichts wurde gedruckt. Sieh nach, ob er an ist, oder speichere sie als PDF.</translation>
    </message>
    <message>
        <source>This printer has no page of {wide:g} × {high:g} mm; it offered {width:.0f} × {height:.0f} mm. Nothing was printed. Choose a sheet that it takes, or save as a PDF.</source>
        <translation>Dieser Drucker hat keine Seite von {wide:g} × {high:g} mm; er bot {width:.0f} × {height:.0f} mm. Nichts wurde gedruckt. Wähle einen Bogen, den er nimmt, oder speichere als PDF.</translation>
    </message>
    <message>
        <source>Preview of the pages</source>
        <translation>Vorschau der Seiten</translation>
    </message>
    <message>
        <source>This photo cannot be read.</source>
        <translation>Dieses Foto lässt sich nicht lesen.</translation>
    </message>
    <message>
        <source>1 event of the plan is in {file}.</source>
        <translation>1 Termin des Plans steht in {file}.</translation>
    </message>
    <message>
        <source>{n} events of the plan are in {file}.</source>
        <translation>{n} Termine des Plans stehen in {file}.</translation>
    </message>
    <message>
        <source>The calendar’s folder {folder} is not there. The calendar was not written; it is tried again with the next change.</source>
        <translation>Der Ordner des Kalenders {folder} ist nicht da. Der Kalender wurde nicht geschrieben; mit der nächsten Änderung wird es wieder versucht.</translation>
    </message>
    <message>
        <source>The calendar does not follow the plan: {refusal}</source>
        <translation>Der Kalender folgt dem Plan nicht: {refusal}</translation>
    </message>
    <message>
        <source>That is no place on this laptop. Nothing was changed.</source>
        <translation>Das ist kein Ort auf diesem Rechner. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The calendar cannot lie in the studio’s own folder. Nothing was changed.</source>
        <translation>Der Kalender kann nicht im eigenen Ordner der Werkstatt liegen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>There is no folder {folder}. Nothing was changed; choose another.</source>
        <translation>Einen Ordner {folder} gibt es nicht. Nichts wurde geändert; einen anderen wählen.</translation>
    </message>
    <message>
        <source>{file} is there already and is no calendar. Nothing was changed.</source>
        <translation>{file} gibt es schon, und es ist kein Kalender. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>That is the studio’s own folder: what befalls it befalls the copies too. Nothing was changed; choose another.</source>
        <translation>Das ist der eigene Ordner der Werkstatt: Was ihm zustößt, stößt auch den Kopien zu. Nichts wurde geändert; einen anderen wählen.</translation>
    </message>
    <message>
        <source>What is ahead as a file for the calendar of a phone or of another computer: starts, ends, tendings, marks of the cure and baths, each with its alarm.</source>
        <translation>Was ansteht, als Datei für den Kalender eines Telefons oder eines anderen Rechners: Anfänge, Enden, Bewegen, Marken der Reife und Bäder, jeweils mit Wecker.</translation>
    </message>
    <message>
        <source>Open the file in your calendar. A later one brings it up to date: what moved is moved, and what fell away is called off.</source>
        <translation>Die Datei im Kalender öffnen. Eine spätere bringt ihn auf den Stand: Was sich verschoben hat, wird verschoben, und was wegfiel, wird abgesagt.</translation>
    </message>
    <message>
        <source>A file that is written anew whenever the plan changes. Choose a place from which your calendar can subscribe to it, such as a synced folder.</source>
        <translation>Eine Datei, die bei jeder Änderung des Plans neu geschrieben wird. Einen Ort wählen, von dem aus der Kalender sie abonnieren kann, etwa einen abgeglichenen Ordner.</translation>
    </message>
    <message>
        <source>Whoever can read the file sees the names and codes of your lots. It holds no notes.</source>
        <translation>Wer die Datei lesen kann, sieht Namen und Nummern der Partien. Notizen stehen nicht darin.</translation>
    </message>
    <message>
        <source>Calendars (*.ics)</source>
        <translation>Kalender (*.ics)</translation>
    </message>
    <message>
        <source>Calendar — Studio Log</source>
        <translation>Kalender – Studio Log</translation>
    </message>
    <message>
        <source>Save the calendar</source>
        <translation>Kalender speichern</translation>
    </message>
    <message>
        <source>&amp;Save the calendar…</source>
        <translation>Kalender &amp;speichern …</translation>
    </message>
    <message>
        <source>Following the plan</source>
        <translation>Dem Plan folgen</translation>
    </message>
    <message>
        <source>Choose a &amp;file…</source>
        <translation>&amp;Datei wählen …</translation>
    </message>
    <message>
        <source>Choose a f&amp;older…</source>
        <translation>&amp;Ordner wählen …</translation>
    </message>
    <message>
        <source>A folder for the calendar</source>
        <translation>Ein Ordner für den Kalender</translation>
    </message>
    <message>
        <source>Once</source>
        <translation>Einmal</translation>
    </message>
    <message>
        <source>Calendar</source>
        <translation>Kalender</translation>
    </message>
    <message>
        <source>Writing…</source>
        <translation>Wird geschrieben …</translation>
    </message>
    <message>
        <source>&amp;Give it up</source>
        <translation>&amp;Aufgeben</translation>
    </message>
    <message>
        <source>Give up: {what}</source>
        <translation>Aufgeben: {what}</translation>
    </message>
    <message>
        <source>Nothing is chosen yet.</source>
        <translation>Noch ist nichts gewählt.</translation>
    </message>
    <message>
        <source>{typed} is no swatch’s code, such as W26-001. Nothing was changed.</source>
        <translation>{typed} ist kein Kürzel einer Probe wie W26-001. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the colour</source>
        <translation>die Farbe</translation>
    </message>
    <message>
        <source>{typed} is not read as a colour: L*, a* and b* such as 52.1, 31.8, 24.0. Nothing was changed.</source>
        <translation>{typed} lässt sich nicht als Farbe lesen: L*, a* und b* wie 52.1, 31.8, 24.0. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{L}, {a}, {b} is no colour of a surface: L* is 0 to 100, a* and b* lie between -{most} and {most}. Nothing was changed.</source>
        <translation>{L}, {a}, {b} ist keine Farbe einer Oberfläche: L* liegt zwischen 0 und 100, a* und b* zwischen -{most} und {most}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the grade</source>
        <translation>die Note</translation>
    </message>
    <message>
        <source>{typed} is no step of the scale: {steps}. Nothing was changed.</source>
        <translation>{typed} ist keine Stufe des Maßstabs: {steps}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Entry {number} is the mean of its spots, which a correction would leave behind. Nothing was changed; take it back, and write the spots down anew.</source>
        <translation>Eintrag {number} ist das Mittel seiner Stellen, die eine Berichtigung zurückließe. Nichts wurde geändert; ihn zurücknehmen und die Stellen neu aufschreiben.</translation>
    </message>
    <message>
        <source>More of {code} stands on its cutting. Take that back first. Nothing was changed.</source>
        <translation>Auf dem Abschneiden von {code} steht noch mehr. Das zuerst zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Entry {number} has no reading {names}. Nothing was changed.</source>
        <translation>Eintrag {number} hat keinen Messwert {names}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>There is no swatch {code}. Nothing was changed; `swatch list` shows them.</source>
        <translation>Es gibt keine Probe {code}. Nichts wurde geändert; `swatch list` zeigt alle.</translation>
    </message>
    <message>
        <source>{count} earlier</source>
        <translation>{count} frühere</translation>
    </message>
    <message>
        <source>Swatches: {swatches}.</source>
        <translation>Proben: {swatches}.</translation>
    </message>
    <message>
        <source>Ask for 1 to {most} swatches. Nothing was changed.</source>
        <translation>Nach 1 bis {most} Proben fragen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>relative only: its photo had no target</source>
        <translation>nur vergleichend: Das Foto hatte keine Farbtafel</translation>
    </message>
    <message>
        <source>read for another observer ({white})</source>
        <translation>für einen anderen Beobachter gemessen ({white})</translation>
    </message>
    <message>
        <source>master half</source>
        <translation>Vergleichshälfte</translation>
    </message>
    <message>
        <source>test half</source>
        <translation>Prüfhälfte</translation>
    </message>
    <message>
        <source>cloth beside it, before</source>
        <translation>Begleitgewebe, vorher</translation>
    </message>
    <message>
        <source>cloth beside it, after</source>
        <translation>Begleitgewebe, nachher</translation>
    </message>
    <message>
        <source>The order is one of {known}, and up to {most} swatches are listed at once.</source>
        <translation>Die Reihenfolge ist eine von {known}, und höchstens {most} Proben werden auf einmal aufgeführt.</translation>
    </message>
    <message>
        <source>Name 1 to {most} swatches.</source>
        <translation>1 bis {most} Proben nennen.</translation>
    </message>
    <message>
        <source>not said where</source>
        <translation>Platz nicht genannt</translation>
    </message>
    <message>
        <source>in one piece: {place}</source>
        <translation>in einem Stück: {place}</translation>
    </message>
    <message>
        <source>master half: {place}; test half: {test}</source>
        <translation>Vergleichshälfte: {place}; Prüfhälfte: {test}</translation>
    </message>
    <message>
        <source>piece {number}: {title}</source>
        <translation>Stück {number}: {title}</translation>
    </message>
    <message>
        <source>piece {number}</source>
        <translation>Stück {number}</translation>
    </message>
    <message>
        <source>{method}: {first} to {last}</source>
        <translation>{method}: {first} bis {last}</translation>
    </message>
    <message>
        <source>{method}: {first}</source>
        <translation>{method}: {first}</translation>
    </message>
    <message>
        <source>{method}: since {first}</source>
        <translation>{method}: seit {first}</translation>
    </message>
    <message>
        <source>cured {n} day when it was cut</source>
        <translation>beim Abschneiden {n} Tag ausgereift</translation>
    </message>
    <message>
        <source>cured {n} days when it was cut</source>
        <translation>beim Abschneiden {n} Tage ausgereift</translation>
    </message>
    <message>
        <source>K/S {figure} at {nm} nm</source>
        <translation>K/S {figure} bei {nm} nm</translation>
    </message>
    <message>
        <source>{scale}: {figure}</source>
        <translation>{scale}: {figure}</translation>
    </message>
    <message>
        <source>{test} {grade} ({scale})</source>
        <translation>{test} {grade} ({scale})</translation>
    </message>
    <message>
        <source>estimated grade</source>
        <translation>geschätzte Note</translation>
    </message>
    <message>
        <source>a photo</source>
        <translation>ein Foto</translation>
    </message>
    <message>
        <source>instrument</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>photo with target</source>
        <translation>Foto mit Farbtafel</translation>
    </message>
    <message>
        <source>photo without target, relative only</source>
        <translation>Foto ohne Farbtafel, nur vergleichend</translation>
    </message>
    <message>
        <source>{chroma} · no hue</source>
        <translation>{chroma} · kein Farbton</translation>
    </message>
    <message>
        <source>daylight</source>
        <translation>Tageslicht</translation>
    </message>
    <message>
        <source>wash</source>
        <translation>Wäsche</translation>
    </message>
    <message>
        <source>dry rubbing</source>
        <translation>Trockenreiben</translation>
    </message>
    <message>
        <source>wet rubbing</source>
        <translation>Nassreiben</translation>
    </message>
    <message>
        <source>perspiration</source>
        <translation>Schweiß</translation>
    </message>
    <message>
        <source>other test</source>
        <translation>andere Prüfung</translation>
    </message>
    <message>
        <source>change, grey scale</source>
        <translation>Änderung, Graumaßstab</translation>
    </message>
    <message>
        <source>staining, grey scale</source>
        <translation>Anbluten, Graumaßstab</translation>
    </message>
    <message>
        <source>blue wool</source>
        <translation>Blaumaßstab</translation>
    </message>
    <message>
        <source>colour not read yet</source>
        <translation>Farbe noch nicht gemessen</translation>
    </message>
    <message>
        <source>2u {figure}</source>
        <translation>2u {figure}</translation>
    </message>
    <message>
        <source>{n} lot follows the plan.</source>
        <translation>{n} Partie folgt dem Plan.</translation>
    </message>
    <message>
        <source>{n} lots follow the plan.</source>
        <translation>{n} Partien folgen dem Plan.</translation>
    </message>
    <message>
        <source>Lots that follow a plan are reminded by it. Undo takes the plan back, and on a lot that lot alone.</source>
        <translation>Partien, die einem Plan folgen, werden nach ihm erinnert. Rückgängig nimmt den Plan zurück, bei einer Partie nur diese.</translation>
    </message>
    <message>
        <source>{name} counts on the milk of {maker}: let {maker} follow too, or take the sharing out. Nothing was changed.</source>
        <translation>{name} rechnet mit der Milch von {maker}: auch {maker} folgen lassen oder das Teilen herausnehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The milk of {maker} serves it, by its plan.</source>
        <translation>Nach dem Plan reicht die Milch von {maker} auch für sie.</translation>
    </message>
    <message>
        <source>The milk of {maker} serves {others} too.</source>
        <translation>Die Milch von {maker} reicht auch für {others}.</translation>
    </message>
    <message>
        <source>The milk of {maker} serves {others} too: soak {grams} g of dry beans in all.</source>
        <translation>Die Milch von {maker} reicht auch für {others}: zusammen {grams} g trockene Bohnen einweichen.</translation>
    </message>
    <message>
        <source>always</source>
        <translation>immer</translation>
    </message>
    <message>
        <source>wanted: {method}</source>
        <translation>gewünscht: {method}</translation>
    </message>
    <message>
        <source>{order}, for {others} too</source>
        <translation>{order}, auch für {others}</translation>
    </message>
    <message>
        <source>{goal} wants {pieces} pieces; the lots that can serve it have {there}. It is planned for those; add a lot that is wanted.</source>
        <translation>{goal} verlangt {pieces} Stücke; die Partien, die dafür in Frage kommen, haben {there}. Für diese wird geplant; füge eine gewünschte Partie hinzu.</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>gewünscht</translation>
    </message>
    <message>
        <source>always, for nothing is said</source>
        <translation>immer, denn es ist nichts angegeben</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>never</source>
        <translation>nie</translation>
    </message>
    <message>
        <source>all but the quiet hours</source>
        <translation>alles außer den Ruhezeiten</translation>
    </message>
    <message>
        <source>Working: {working}. Quiet: {nights}. Waking: {waking}.</source>
        <translation>Arbeit: {working}. Ruhe: {nights}. Wach: {waking}.</translation>
    </message>
    <message>
        <source>Working hours lie outside the waking ones: {hours}.</source>
        <translation>Arbeitszeiten liegen außerhalb der wachen Zeiten: {hours}.</translation>
    </message>
    <message>
        <source>as its weekday</source>
        <translation>wie sein Wochentag</translation>
    </message>
    <message>
        <source>{first} to {last}</source>
        <translation>{first} bis {last}</translation>
    </message>
    <message>
        <source>{when}: {hours}</source>
        <translation>{when}: {hours}</translation>
    </message>
    <message>
        <source>every night {hours}</source>
        <translation>jede Nacht {hours}</translation>
    </message>
    <message>
        <source>A day on which the studio works otherwise: choose it, type its hours, and put it in.</source>
        <translation>Ein Tag, an dem die Werkstatt anders arbeitet: wählen, seine Zeiten eingeben, eintragen.</translation>
    </message>
    <message>
        <source>“{text}” is no day. Write it as 14 August, Fri, or 2026-08-14.</source>
        <translation>„{text}“ ist kein Tag. So: 2026-08-14.</translation>
    </message>
    <message>
        <source>Up to and with</source>
        <translation>Bis einschließlich</translation>
    </message>
    <message>
        <source>the same day, or 14 August</source>
        <translation>derselbe Tag, oder 2026-08-14</translation>
    </message>
    <message>
        <source>Hours of the day</source>
        <translation>Zeiten des Tages</translation>
    </message>
    <message>
        <source>closed, or 10-12</source>
        <translation>geschlossen, oder 10-12</translation>
    </message>
    <message>
        <source>Why, in a word</source>
        <translation>Warum, in einem Wort</translation>
    </message>
    <message>
        <source>fair</source>
        <translation>Markt</translation>
    </message>
    <message>
        <source>&amp;Put it in</source>
        <translation>&amp;Eintragen</translation>
    </message>
    <message>
        <source>As its w&amp;eekday</source>
        <translation>&amp;Wie sein Wochentag</translation>
    </message>
    <message>
        <source>Ta&amp;ke it out</source>
        <translation>&amp;Herausnehmen</translation>
    </message>
    <message>
        <source>Single days</source>
        <translation>Einzelne Tage</translation>
    </message>
    <message>
        <source>Hour&amp;s</source>
        <translation>Zeite&amp;n</translation>
    </message>
    <message>
        <source>Wh&amp;y</source>
        <translation>War&amp;um</translation>
    </message>
    <message>
        <source>Up t&amp;o</source>
        <translation>&amp;Bis</translation>
    </message>
    <message>
        <source>Why it differs holds signs that cannot be kept. Type it again.</source>
        <translation>Der Grund enthält Zeichen, die nicht aufbewahrt werden können. Bitte neu eingeben.</translation>
    </message>
    <message>
        <source>{day}: now {hours}</source>
        <translation>{day}: jetzt {hours}</translation>
    </message>
    <message>
        <source>To put in: {words}</source>
        <translation>Einzutragen: {words}</translation>
    </message>
    <message>
        <source>no country</source>
        <translation>kein Land</translation>
    </message>
    <message>
        <source>the whole country</source>
        <translation>das ganze Land</translation>
    </message>
    <message>
        <source>No country is called “{text}”. Choose one of the list.</source>
        <translation>Kein Land heißt „{text}“. Eines aus der Liste wählen.</translation>
    </message>
    <message>
        <source>Holidays are closed unless a tick says that you work. They are worked out on this laptop; days that a government adds later are not among them.</source>
        <translation>Feiertage sind geschlossen, außer ein Haken sagt, dass gearbeitet wird. Sie werden auf diesem Rechner bestimmt; Tage, die eine Regierung später hinzufügt, sind nicht dabei.</translation>
    </message>
    <message>
        <source>Country</source>
        <translation>Land</translation>
    </message>
    <message>
        <source>Part of the country</source>
        <translation>Teil des Landes</translation>
    </message>
    <message>
        <source>The next holidays; a tick means that you work</source>
        <translation>Die nächsten Feiertage; ein Haken heißt: es wird gearbeitet</translation>
    </message>
    <message>
        <source>Holidays</source>
        <translation>Feiertage</translation>
    </message>
    <message>
        <source>Coun&amp;try</source>
        <translation>&amp;Land</translation>
    </message>
    <message>
        <source>Pa&amp;rt</source>
        <translation>&amp;Teil</translation>
    </message>
    <message>
        <source>we work, {hours}</source>
        <translation>es wird gearbeitet, {hours}</translation>
    </message>
    <message>
        <source>closed anyway on this weekday</source>
        <translation>an diesem Wochentag ohnehin geschlossen</translation>
    </message>
    <message>
        <source>What was changed here and not kept stands here again. Undo goes back to what is in force.</source>
        <translation>Was hier geändert und nicht behalten wurde, steht wieder hier. „Rückgängig“ führt zu dem zurück, was gilt.</translation>
    </message>
    <message>
        <source>Something is typed for a single day and not put in. Put it in, or clear its lines.</source>
        <translation>Für einen einzelnen Tag ist etwas eingegeben und nicht eingetragen. Eintragen oder die Felder leeren.</translation>
    </message>
    <message>
        <source>The hours were changed elsewhere meanwhile. What stands here is as you left it; keeping it replaces them.</source>
        <translation>Die Zeiten wurden inzwischen anderswo geändert. Was hier steht, ist wie zuletzt; es zu behalten ersetzt sie.</translation>
    </message>
    <message>
        <source>Hours — Studio Log</source>
        <translation>Zeiten — Studio Log</translation>
    </message>
    <message>
        <source>Re&amp;do</source>
        <translation>Wiede&amp;rherstellen</translation>
    </message>
    <message>
        <source>Keep t&amp;hese</source>
        <translation>Diese &amp;behalten</translation>
    </message>
    <message>
        <source>Hours</source>
        <translation>Zeiten</translation>
    </message>
    <message>
        <source>The month before</source>
        <translation>Der Monat davor</translation>
    </message>
    <message>
        <source>The month after</source>
        <translation>Der Monat danach</translation>
    </message>
    <message>
        <source>Month</source>
        <translation>Monat</translation>
    </message>
    <message>
        <source>Days of the month</source>
        <translation>Tage des Monats</translation>
    </message>
    <message>
        <source>&amp;Working</source>
        <translation>&amp;Arbeit</translation>
    </message>
    <message>
        <source>Edit the working hours</source>
        <translation>Die Arbeitszeiten bearbeiten</translation>
    </message>
    <message>
        <source>&amp;Quiet</source>
        <translation>Ru&amp;he</translation>
    </message>
    <message>
        <source>Edit the quiet hours</source>
        <translation>Die Ruhezeiten bearbeiten</translation>
    </message>
    <message>
        <source>W&amp;aking</source>
        <translation>Wa&amp;ch</translation>
    </message>
    <message>
        <source>Edit the waking hours</source>
        <translation>Die wachen Zeiten bearbeiten</translation>
    </message>
    <message>
        <source>Working hours on {day}</source>
        <translation>Arbeitszeiten am {day}</translation>
    </message>
    <message>
        <source>Quiet hours of the night after {day}</source>
        <translation>Ruhezeit der Nacht nach {day}</translation>
    </message>
    <message>
        <source>Waking hours on {day}</source>
        <translation>Wache Zeiten am {day}</translation>
    </message>
    <message>
        <source>9-12:30, 13:30-17</source>
        <translation>9-12:30, 13:30-17</translation>
    </message>
    <message>
        <source>22-7</source>
        <translation>22-7</translation>
    </message>
    <message>
        <source>7-22</source>
        <translation>7-22</translation>
    </message>
    <message>
        <source>When somebody is in the workshop. Pull across a day to make a bar, pull its ends or move it, or type. The timeline shades the rest; no reminder goes by it.</source>
        <translation>Wann jemand in der Werkstatt ist. Über einen Tag ziehen macht einen Balken; ihn an den Enden ziehen, verschieben, oder tippen. Die Zeitleiste schattiert das Übrige; keine Erinnerung richtet sich danach.</translation>
    </message>
    <message>
        <source>In quiet hours nothing rings; it waits until they end. A line holds the night after its evening; without text that night is not quiet.</source>
        <translation>In Ruhezeiten läutet nichts; es wartet, bis sie enden. Eine Zeile enthält die Nacht nach ihrem Abend; ohne Text gilt in dieser Nacht keine Ruhe.</translation>
    </message>
    <message>
        <source>When somebody is up and could come in once. Without any bar it is all but the quiet hours; quiet hours are never waking.</source>
        <translation>Wann jemand wach ist und einmal kommen könnte. Ohne Balken ist das alles außer den Ruhezeiten; Ruhezeiten sind nie wach.</translation>
    </message>
    <message>
        <source>&amp;Copy a day to…</source>
        <translation>Einen Tag &amp;kopieren …</translation>
    </message>
    <message>
        <source>What was understood of the hours</source>
        <translation>Was von den Zeiten verstanden wurde</translation>
    </message>
    <message>
        <source>The week</source>
        <translation>Die Woche</translation>
    </message>
    <message>
        <source>{day}, to Monday–Friday</source>
        <translation>{day}, auf Montag–Freitag</translation>
    </message>
    <message>
        <source>{day}, to every day</source>
        <translation>{day}, auf jeden Tag</translation>
    </message>
    <message>
        <source>{day}, to {other}</source>
        <translation>{day}, auf {other}</translation>
    </message>
    <message>
        <source>The week, by hand</source>
        <translation>Die Woche, von Hand</translation>
    </message>
    <message>
        <source>no hours</source>
        <translation>keine Zeiten</translation>
    </message>
    <message>
        <source>{day}: {hours}</source>
        <translation>{day}: {hours}</translation>
    </message>
    <message>
        <source>&amp;Make a bar</source>
        <translation>Balken &amp;anlegen</translation>
    </message>
    <message>
        <source>&amp;Take the bar away</source>
        <translation>Balken &amp;wegnehmen</translation>
    </message>
    <message>
        <source>T&amp;ype the hours</source>
        <translation>Zeiten &amp;tippen</translation>
    </message>
    <message>
        <source>&amp;Copy this day</source>
        <translation>Diesen Tag &amp;kopieren</translation>
    </message>
    <message>
        <source>&amp;Give it the hours copied</source>
        <translation>Die kopierten Zeiten &amp;geben</translation>
    </message>
    <message>
        <source>The hours as they are</source>
        <translation>Die Zeiten, wie sie sind</translation>
    </message>
    <message>
        <source>Change the ho&amp;urs…</source>
        <translation>Die Z&amp;eiten ändern …</translation>
    </message>
    <message>
        <source>master half, or the whole</source>
        <translation>Vergleichshälfte oder das Ganze</translation>
    </message>
    <message>
        <source>cloth beside it, before the test</source>
        <translation>Begleitgewebe, vor der Prüfung</translation>
    </message>
    <message>
        <source>cloth beside it, after the test</source>
        <translation>Begleitgewebe, nach der Prüfung</translation>
    </message>
    <message>
        <source>Which cloth</source>
        <translation>Welcher Stoff</translation>
    </message>
    <message>
        <source>Which &amp;cloth</source>
        <translation>Welcher &amp;Stoff</translation>
    </message>
    <message>
        <source>second coat, rinsed hot</source>
        <translation>zweiter Auftrag, heiß gespült</translation>
    </message>
    <message>
        <source>&amp;Kept at</source>
        <translation>A&amp;ufgehoben</translation>
    </message>
    <message>
        <source>master half, or the whole: drawer 3</source>
        <translation>Vergleichshälfte oder das Ganze: Schublade 3</translation>
    </message>
    <message>
        <source>&amp;Test half at</source>
        <translation>&amp;Prüfhälfte</translation>
    </message>
    <message>
        <source>blank where it is not cut in halves</source>
        <translation>leer, wenn sie nicht geteilt ist</translation>
    </message>
    <message>
        <source>daylight D65, 2° (photos)</source>
        <translation>Tageslicht D65, 2° (Fotos)</translation>
    </message>
    <message>
        <source>daylight D65, 10° (instruments)</source>
        <translation>Tageslicht D65, 10° (Messgeräte)</translation>
    </message>
    <message>
        <source>New swatch</source>
        <translation>Neue Probe</translation>
    </message>
    <message>
        <source>It gets a code of its own. The methods that its lot has walked come with it.</source>
        <translation>Sie bekommt ein eigenes Kürzel. Die Methoden, die ihre Partie durchlaufen hat, stehen dabei.</translation>
    </message>
    <message>
        <source>&amp;Piece</source>
        <translation>&amp;Stück</translation>
    </message>
    <message>
        <source>its number, if there are several</source>
        <translation>seine Nummer, wenn es mehrere sind</translation>
    </message>
    <message>
        <source>A colour that an instrument gave</source>
        <translation>Eine Farbe vom Messgerät</translation>
    </message>
    <message>
        <source>L*, a*, &amp;b*</source>
        <translation>L*, a*, &amp;b*</translation>
    </message>
    <message>
        <source>&amp;Daylight and observer</source>
        <translation>&amp;Tageslicht und Beobachter</translation>
    </message>
    <message>
        <source>2&amp;u, in CIEDE2000</source>
        <translation>2&amp;u, in CIEDE2000</translation>
    </message>
    <message>
        <source>if it is known: 0.8</source>
        <translation>falls bekannt: 0,8</translation>
    </message>
    <message>
        <source>&amp;Instrument</source>
        <translation>&amp;Gerät</translation>
    </message>
    <message>
        <source>its name</source>
        <translation>sein Name</translation>
    </message>
    <message>
        <source>The grade of a test</source>
        <translation>Die Note einer Prüfung</translation>
    </message>
    <message>
        <source>Left blank, the grade is estimated: a change from the colours of both halves, staining from those of the cloth beside it, before and after.</source>
        <translation>Leer gelassen wird die Note geschätzt: eine Farbänderung aus den Farben beider Hälften, Anbluten aus denen des Begleitgewebes, vorher und nachher.</translation>
    </message>
    <message>
        <source>&amp;Test</source>
        <translation>&amp;Prüfung</translation>
    </message>
    <message>
        <source>&amp;Grade</source>
        <translation>&amp;Note</translation>
    </message>
    <message>
        <source>&amp;Scale</source>
        <translation>&amp;Maßstab</translation>
    </message>
    <message>
        <source>How &amp;long</source>
        <translation>Wie &amp;lange</translation>
    </message>
    <message>
        <source>4 weeks, 3 washes</source>
        <translation>4 Wochen, 3 Wäschen</translation>
    </message>
    <message>
        <source>Begin the light test</source>
        <translation>Die Lichtprobe beginnen</translation>
    </message>
    <message>
        <source>The test half hangs in the window, the master half stays in the dark. Reminders come after 2, 4 and 8 weeks.</source>
        <translation>Die Prüfhälfte hängt im Fenster, die Vergleichshälfte bleibt im Dunkeln. Nach 2, 4 und 8 Wochen wird erinnert.</translation>
    </message>
    <message>
        <source>&amp;Window</source>
        <translation>&amp;Fenster</translation>
    </message>
    <message>
        <source>south, behind glass</source>
        <translation>Süden, hinter Glas</translation>
    </message>
    <message>
        <source>&amp;Remark</source>
        <translation>&amp;Bemerkung</translation>
    </message>
    <message>
        <source>Change the swatch</source>
        <translation>Die Probe ändern</translation>
    </message>
    <message>
        <source>ΔE</source>
        <translation>ΔE</translation>
    </message>
    <message>
        <source>Swatch</source>
        <translation>Probe</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Abgeschnitten</translation>
    </message>
    <message>
        <source>Type a colour, choose one, or pick it from the screen: what is near is shown here.</source>
        <translation>Eine Farbe eintippen, aussuchen oder vom Bildschirm nehmen: Was ihr nahe liegt, steht dann hier.</translation>
    </message>
    <message>
        <source>ΔE is CIEDE2000: about 1 is just seen side by side, 5 across a table. The colours of a screen are taken as sRGB: as true as the screen is.</source>
        <translation>ΔE ist CIEDE2000: Etwa 1 ist nebeneinander gerade zu sehen, 5 über einen Tisch hinweg. Farben vom Bildschirm gelten als sRGB: so echt, wie der Bildschirm ist.</translation>
    </message>
    <message>
        <source>Find by colour — Studio Log</source>
        <translation>Nach Farbe suchen — Studio Log</translation>
    </message>
    <message>
        <source>L*, a*, b*</source>
        <translation>L*, a*, b*</translation>
    </message>
    <message>
        <source>The chosen &amp;swatch</source>
        <translation>Die gewählte &amp;Probe</translation>
    </message>
    <message>
        <source>&amp;Choose a colour…</source>
        <translation>Farbe &amp;aussuchen…</translation>
    </message>
    <message>
        <source>&amp;Pick from the screen</source>
        <translation>Vom &amp;Bildschirm nehmen</translation>
    </message>
    <message>
        <source>From a p&amp;hoto…</source>
        <translation>Aus einem F&amp;oto…</translation>
    </message>
    <message>
        <source>Sho&amp;w it</source>
        <translation>An&amp;zeigen</translation>
    </message>
    <message>
        <source>The colour looked for: {code}</source>
        <translation>Die gesuchte Farbe: {code}</translation>
    </message>
    <message>
        <source>No swatch with a colour is there yet.</source>
        <translation>Noch ist keine Probe mit einer Farbe da.</translation>
    </message>
    <message>
        <source>Choose a colour</source>
        <translation>Farbe aussuchen</translation>
    </message>
    <message>
        <source>Nearest swatches</source>
        <translation>Nächste Proben</translation>
    </message>
    <message>
        <source>No lot’s code, such as 26-031.</source>
        <translation>Kein Kürzel einer Partie wie 26-031.</translation>
    </message>
    <message>
        <source>A whole number, such as 1.</source>
        <translation>Eine ganze Zahl, etwa 1.</translation>
    </message>
    <message>
        <source>A figure from 0 to 50, such as 0.8.</source>
        <translation>Eine Zahl von 0 bis 50, etwa 0,8.</translation>
    </message>
    <message>
        <source>No step of the scale: {steps}; blue wool 1 to 8.</source>
        <translation>Keine Stufe des Maßstabs: {steps}; Blaumaßstab 1 bis 8.</translation>
    </message>
    <message>
        <source>This desktop does not let a program see the screen. Choose the colour in the colour box, type it, or take it from a photo.</source>
        <translation>Diese Oberfläche lässt ein Programm den Bildschirm nicht sehen. Die Farbe im Farbfenster aussuchen, eintippen oder aus einem Foto nehmen.</translation>
    </message>
    <message>
        <source>Click the colour; Esc leaves</source>
        <translation>Auf die Farbe klicken; Esc bricht ab</translation>
    </message>
    <message>
        <source>newest first</source>
        <translation>neueste zuerst</translation>
    </message>
    <message>
        <source>by code</source>
        <translation>nach Kürzel</translation>
    </message>
    <message>
        <source>by lot</source>
        <translation>nach Partie</translation>
    </message>
    <message>
        <source>lightest first</source>
        <translation>hellste zuerst</translation>
    </message>
    <message>
        <source>darkest first</source>
        <translation>dunkelste zuerst</translation>
    </message>
    <message>
        <source>Those no longer &amp;kept</source>
        <translation>Auch nicht mehr auf&amp;gehobene</translation>
    </message>
    <message>
        <source>&amp;Tiles</source>
        <translation>&amp;Kacheln</translation>
    </message>
    <message>
        <source>&amp;All by colour</source>
        <translation>&amp;Alle nach Farbe</translation>
    </message>
    <message>
        <source>Lots &amp;side by side</source>
        <translation>&amp;Partien nebeneinander</translation>
    </message>
    <message>
        <source>By age o&amp;f cure</source>
        <translation>Nach Alter der Rei&amp;fe</translation>
    </message>
    <message>
        <source>Drawing (*.svg);;Picture (*.png);;Figures (*.csv)</source>
        <translation>Zeichnung (*.svg);;Bild (*.png);;Zahlen (*.csv)</translation>
    </message>
    <message>
        <source>No swatch was cut yet. Cut one from a lot when its colour is worth keeping: it gets a code, and the log knows by which methods it came about. Begin with “New swatch”.</source>
        <translation>Noch wurde keine Probe abgeschnitten. Von einer Partie eine abschneiden, wenn die Farbe es wert ist: Sie bekommt ein Kürzel, und das Buch weiß, durch welche Methoden sie entstand. Mit „Neue Probe“ beginnen.</translation>
    </message>
    <message>
        <source>No swatch holds these words.</source>
        <translation>Keine Probe enthält diese Wörter.</translation>
    </message>
    <message>
        <source>Sa&amp;ve…</source>
        <translation>&amp;Speichern…</translation>
    </message>
    <message>
        <source>{n} lot more</source>
        <translation>noch {n} Partie</translation>
    </message>
    <message>
        <source>{n} lots more</source>
        <translation>noch {n} Partien</translation>
    </message>
    <message>
        <source>{n} swatch more</source>
        <translation>noch {n} Probe</translation>
    </message>
    <message>
        <source>{n} swatches more</source>
        <translation>noch {n} Proben</translation>
    </message>
    <message>
        <source>○ relative only</source>
        <translation>○ nur vergleichend</translation>
    </message>
    <message>
        <source>Save the swatches by colour</source>
        <translation>Die Proben nach Farbe speichern</translation>
    </message>
    <message>
        <source>Swatches — Studio Log</source>
        <translation>Farbproben — Studio Log</translation>
    </message>
    <message>
        <source>Find: lot, name, method, place</source>
        <translation>Suchen: Partie, Name, Methode, Platz</translation>
    </message>
    <message>
        <source>Find swatches</source>
        <translation>Proben suchen</translation>
    </message>
    <message>
        <source>&amp;New swatch…</source>
        <translation>&amp;Neue Probe…</translation>
    </message>
    <message>
        <source>Find by &amp;colour…</source>
        <translation>Nach &amp;Farbe suchen…</translation>
    </message>
    <message>
        <source>Order of the swatches</source>
        <translation>Reihenfolge der Proben</translation>
    </message>
    <message>
        <source>The chosen swatch</source>
        <translation>Die gewählte Probe</translation>
    </message>
    <message>
        <source>{n} swatch</source>
        <translation>{n} Probe</translation>
    </message>
    <message>
        <source>{n} swatches</source>
        <translation>{n} Proben</translation>
    </message>
    <message>
        <source>{count} by the age of their cure</source>
        <translation>{count} nach dem Alter ihrer Reife</translation>
    </message>
    <message>
        <source>{count} by a* and b*</source>
        <translation>{count} nach a* und b*</translation>
    </message>
    <message>
        <source>Swatches by the age of their cure</source>
        <translation>Proben nach dem Alter ihrer Reife</translation>
    </message>
    <message>
        <source>Swatches by a* and b*</source>
        <translation>Proben nach a* und b*</translation>
    </message>
    <message>
        <source>No swatch here has a colour yet.</source>
        <translation>Hier hat noch keine Probe eine Farbe.</translation>
    </message>
    <message>
        <source>~ relative only   ≈ beyond the screen</source>
        <translation>~ nur vergleichend   ≈ vom Bildschirm nicht darstellbar</translation>
    </message>
    <message>
        <source>Pictures (*.jpg *.jpeg *.png *.webp)</source>
        <translation>Bilder (*.jpg *.jpeg *.png *.webp)</translation>
    </message>
    <message>
        <source>Keep a picture</source>
        <translation>Ein Bild aufheben</translation>
    </message>
    <message>
        <source>Read the colour from a &amp;photo…</source>
        <translation>Farbe aus einem &amp;Foto…</translation>
    </message>
    <message>
        <source>From an &amp;instrument…</source>
        <translation>Vom &amp;Messgerät…</translation>
    </message>
    <message>
        <source>T&amp;yped…</source>
        <translation>&amp;Eintippen…</translation>
    </message>
    <message>
        <source>&amp;Grade…</source>
        <translation>&amp;Note…</translation>
    </message>
    <message>
        <source>&amp;Begin the light test…</source>
        <translation>&amp;Lichtprobe beginnen…</translation>
    </message>
    <message>
        <source>End the light test</source>
        <translation>Lichtprobe beenden</translation>
    </message>
    <message>
        <source>&amp;Remark…</source>
        <translation>&amp;Bemerkung…</translation>
    </message>
    <message>
        <source>Keep a pictur&amp;e…</source>
        <translation>B&amp;ild aufheben…</translation>
    </message>
    <message>
        <source>&amp;What is near it</source>
        <translation>&amp;Was ihr nahe liegt</translation>
    </message>
    <message>
        <source>C&amp;hange…</source>
        <translation>Ä&amp;ndern…</translation>
    </message>
    <message>
        <source>Print its car&amp;d…</source>
        <translation>&amp;Karte drucken…</translation>
    </message>
    <message>
        <source>Kept no longer</source>
        <translation>Nicht mehr aufgehoben</translation>
    </message>
    <message>
        <source>Kept after all</source>
        <translation>Doch aufgehoben</translation>
    </message>
    <message>
        <source>Left the master half, right the test half.</source>
        <translation>Links die Vergleichshälfte, rechts die Prüfhälfte.</translation>
    </message>
    <message>
        <source>No screen shows this colour: what is seen is only near it.</source>
        <translation>Kein Bildschirm zeigt diese Farbe: Zu sehen ist nur eine ähnliche.</translation>
    </message>
    <message>
        <source>cut {when}</source>
        <translation>abgeschnitten {when}</translation>
    </message>
    <message>
        <source>Kept no longer.</source>
        <translation>Nicht mehr aufgehoben.</translation>
    </message>
    <message>
        <source>Lot {words}</source>
        <translation>Partie {words}</translation>
    </message>
    <message>
        <source>Go to the lot {code}</source>
        <translation>Zur Partie {code}</translation>
    </message>
    <message>
        <source>No method was begun by then.</source>
        <translation>Bis dahin war keine Methode begonnen.</translation>
    </message>
    <message>
        <source>not read</source>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>Swatches</source>
        <translation>Proben</translation>
    </message>
    <message>
        <source>Glue the swatch here</source>
        <translation>Probe hier aufkleben</translation>
    </message>
    <message>
        <source>{code} makes a QR code too large for this card. Nothing was printed. Choose a larger one.</source>
        <translation>{code} ergibt einen QR-Code, der für diese Karte zu groß ist. Nichts wurde gedruckt. Eine größere Karte wählen.</translation>
    </message>
    <message>
        <source>Preview of the cards</source>
        <translation>Vorschau der Karten</translation>
    </message>
    <message>
        <source>Swatch cards</source>
        <translation>Probenkarten</translation>
    </message>
    <message>
        <source>Paper of the cards</source>
        <translation>Papier der Karten</translation>
    </message>
    <message>
        <source>First place on the sheet</source>
        <translation>Erster Platz auf dem Bogen</translation>
    </message>
    <message>
        <source>{n} page</source>
        <translation>{n} Seite</translation>
    </message>
    <message>
        <source>{n} pages</source>
        <translation>{n} Seiten</translation>
    </message>
    <message>
        <source>Not all words fit on {codes}.</source>
        <translation>Nicht alle Wörter passen auf {codes}.</translation>
    </message>
    <message>
        <source>&amp;Begin at place</source>
        <translation>&amp;Beginnen auf Platz</translation>
    </message>
    <message>
        <source>Save the cards as a PDF</source>
        <translation>Die Karten als PDF speichern</translation>
    </message>
    <message>
        <source>There is no swatch to make a card for. Nothing was printed.</source>
        <translation>Es gibt keine Probe für eine Karte. Nichts wurde gedruckt.</translation>
    </message>
    <message>
        <source>{count} cards at once are too many. Nothing was printed; make up to {most} at a time.</source>
        <translation>{count} Karten auf einmal sind zu viele. Nichts wurde gedruckt; höchstens {most} auf einmal machen.</translation>
    </message>
    <message>
        <source>Everything that the log knows is written into a new folder: tables that other programs read, one file that Studio Log reads back into an empty studio, and the photos by name. The studio itself is not changed.</source>
        <translation>Alles, was das Logbuch weiß, wird in einen neuen Ordner geschrieben: Tabellen, die andere Programme lesen, eine Datei, die Studio Log in eine leere Werkstatt zurückliest, und die Fotos mit Namen. Die Werkstatt selbst bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Export everything</source>
        <translation>Alles ausgeben</translation>
    </message>
    <message>
        <source>The folder to make</source>
        <translation>Der neue Ordner</translation>
    </message>
    <message>
        <source>C&amp;hoose…</source>
        <translation>&amp;Wählen…</translation>
    </message>
    <message>
        <source>As one &amp;archive (ZIP)</source>
        <translation>Als ein &amp;Archiv (ZIP)</translation>
    </message>
    <message>
        <source>How far the export is</source>
        <translation>Wie weit die Ausgabe ist</translation>
    </message>
    <message>
        <source>&amp;Export</source>
        <translation>Aus&amp;geben</translation>
    </message>
    <message>
        <source>Where the new folder is to stand</source>
        <translation>Wo der neue Ordner stehen soll</translation>
    </message>
    <message>
        <source>Say where the folder is to be made. Nothing was written.</source>
        <translation>Sage, wo der Ordner entstehen soll. Nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>&amp;Stop</source>
        <translation>An&amp;halten</translation>
    </message>
    <message>
        <source>The program made a mistake of its own. The studio was not changed; try again.</source>
        <translation>Das Programm hat selbst einen Fehler gemacht. Die Werkstatt wurde nicht geändert; versuche es noch einmal.</translation>
    </message>
    <message>
        <source>No copy is there yet.</source>
        <translation>Dort ist noch keine Kopie.</translation>
    </message>
    <message>
        <source>The last good copy there is of {day}.</source>
        <translation>Die letzte gute Kopie dort ist vom {day}.</translation>
    </message>
    <message>
        <source>1 photo could not be copied: its file is missing or spoilt.</source>
        <translation>1 Foto konnte nicht kopiert werden: Seine Datei fehlt oder ist verdorben.</translation>
    </message>
    <message>
        <source>{n} photos could not be copied: their files are missing or spoilt.</source>
        <translation>{n} Fotos konnten nicht kopiert werden: Ihre Dateien fehlen oder sind verdorben.</translation>
    </message>
    <message>
        <source>No copy could be kept in {folder}: {why}. {last}</source>
        <translation>In {folder} konnte keine Kopie abgelegt werden: {why}. {last}</translation>
    </message>
    <message>
        <source>The last copy of the studio is of {day}. Take one: File, Copies.</source>
        <translation>Die letzte Kopie der Werkstatt ist vom {day}. Eine machen: Datei, Kopien.</translation>
    </message>
    <message>
        <source>{last} Connect {folder} and it is written by itself.</source>
        <translation>{last} {folder} anschließen, dann wird sie von selbst geschrieben.</translation>
    </message>
    <message>
        <source>of the day</source>
        <translation>des Tages</translation>
    </message>
    <message>
        <source>before a new version</source>
        <translation>vor einer neuen Fassung</translation>
    </message>
    <message>
        <source>what a copy replaced</source>
        <translation>was eine Kopie ersetzt hat</translation>
    </message>
    <message>
        <source>damaged, as it was found</source>
        <translation>beschädigt, wie vorgefunden</translation>
    </message>
    <message>
        <source>{what}, in {folder}</source>
        <translation>{what}, in {folder}</translation>
    </message>
    <message>
        <source>its disk is full</source>
        <translation>der Datenträger ist voll</translation>
    </message>
    <message>
        <source>it may not be written to</source>
        <translation>er darf nicht beschrieben werden</translation>
    </message>
    <message>
        <source>it is not there</source>
        <translation>er ist nicht da</translation>
    </message>
    <message>
        <source>its disk failed to read or write</source>
        <translation>der Datenträger hat beim Lesen oder Schreiben versagt</translation>
    </message>
    <message>
        <source>what was written there could not be read back</source>
        <translation>was dort geschrieben wurde, ließ sich nicht wieder lesen</translation>
    </message>
    <message>
        <source>One copy a day is kept: of seven days, of four weeks and of twelve months. Each was read back when it was written.</source>
        <translation>Jeden Tag wird eine Kopie aufgehoben: von sieben Tagen, vier Wochen und zwölf Monaten. Jede wurde nach dem Schreiben wieder gelesen.</translation>
    </message>
    <message>
        <source>Against a lost laptop: a folder on a stick, or one that is synced, gets a copy each day as well, with the photos.</source>
        <translation>Falls der Rechner verloren geht: Ein Ordner auf einem Stick oder ein abgeglichener bekommt jeden Tag auch eine Kopie, mit den Fotos.</translation>
    </message>
    <message>
        <source>Choose a copy to see what putting it back would change.</source>
        <translation>Eine Kopie wählen, um zu sehen, was das Zurücklegen ändern würde.</translation>
    </message>
    <message>
        <source>Copies of a studio (*.sqlite3)</source>
        <translation>Kopien einer Werkstatt (*.sqlite3)</translation>
    </message>
    <message>
        <source>Copies — Studio Log</source>
        <translation>Kopien – Studio Log</translation>
    </message>
    <message>
        <source>Copy the studio to a file</source>
        <translation>Die Werkstatt in eine Datei kopieren</translation>
    </message>
    <message>
        <source>A copy to put back</source>
        <translation>Eine Kopie zum Zurücklegen</translation>
    </message>
    <message>
        <source>Copies</source>
        <translation>Kopien</translation>
    </message>
    <message>
        <source>&amp;Take one now</source>
        <translation>&amp;Jetzt eine machen</translation>
    </message>
    <message>
        <source>C&amp;opy to a file…</source>
        <translation>In eine &amp;Datei kopieren …</translation>
    </message>
    <message>
        <source>&amp;Put this one back…</source>
        <translation>Diese &amp;zurücklegen …</translation>
    </message>
    <message>
        <source>Put &amp;another file back…</source>
        <translation>&amp;Andere Datei zurücklegen …</translation>
    </message>
    <message>
        <source>On another disk too</source>
        <translation>Auch auf einem anderen Datenträger</translation>
    </message>
    <message>
        <source>Choose a &amp;folder…</source>
        <translation>&amp;Ordner wählen …</translation>
    </message>
    <message>
        <source>A folder for copies</source>
        <translation>Ein Ordner für Kopien</translation>
    </message>
    <message>
        <source>Looking into it…</source>
        <translation>Wird angesehen …</translation>
    </message>
    <message>
        <source>{size} MB</source>
        <translation>{size} MB</translation>
    </message>
    <message>
        <source>{code} has slipped from its plan: {title} was planned for {moment}.</source>
        <translation>{code} ist aus dem Plan gerutscht: {title} war für {moment} geplant.</translation>
    </message>
    <message>
        <source> So have {n} more.</source>
        <translation> Ebenso {n} weitere.</translation>
    </message>
    <message>
        <source> The plan (Ctrl+0) offers a repair.</source>
        <translation> Der Plan (Strg+0) bietet eine Ausbesserung an.</translation>
    </message>
    <message>
        <source>Follow the plan</source>
        <translation>Dem Plan folgen</translation>
    </message>
    <message>
        <source>Lots that shall follow the plan</source>
        <translation>Partien, die dem Plan folgen sollen</translation>
    </message>
    <message>
        <source>&amp;Follow it</source>
        <translation>&amp;Ihm folgen</translation>
    </message>
    <message>
        <source>&amp;Write that into the studio’s hours, means and goals</source>
        <translation>Das auch in Z&amp;eiten, Mittel und Ziele der Werkstatt schreiben</translation>
    </message>
    <message>
        <source>Lots that follow the plan are told by their reminders when it is time. What is wanted becomes a lot. Undo takes the plan back, and on a lot that lot alone.</source>
        <translation>Partien, die dem Plan folgen, melden sich mit ihren Erinnerungen, wenn es so weit ist. Was gewünscht ist, wird eine Partie. Rückgängig nimmt den Plan zurück, bei einer Partie nur diese.</translation>
    </message>
    <message>
        <source>This plan counts on: {changes}.</source>
        <translation>Dieser Plan rechnet mit: {changes}.</translation>
    </message>
    <message>
        <source>{name}: {pieces} cured {days} d by {day}, {hour}</source>
        <translation>{name}: {pieces}, {days} T gereift bis {day}, {hour}</translation>
    </message>
    <message>
        <source>{goal}; of {lots}</source>
        <translation>{goal}; aus {lots}</translation>
    </message>
    <message>
        <source>Nothing to compare with: no lot follows a plan yet, and nothing else is tried.</source>
        <translation>Nichts zu vergleichen: noch folgt keine Partie einem Plan, und nichts anderes wird versucht.</translation>
    </message>
    <message>
        <source>This plan was taken before it was compared. Plan again to see what is otherwise.</source>
        <translation>Dieser Plan wurde genommen, bevor er verglichen war. Neu planen zeigt, was anders ist.</translation>
    </message>
    <message>
        <source>What is otherwise</source>
        <translation>Was anders ist</translation>
    </message>
    <message>
        <source>Wait until the search is over, then move it again.</source>
        <translation>Warte, bis die Suche vorbei ist, dann verschiebe noch einmal.</translation>
    </message>
    <message>
        <source>No lot was changed; the best plan so far stands. Plan again to go on.</source>
        <translation>Keine Partie wurde geändert; der bisher beste Plan bleibt stehen. Zum Weitermachen neu planen.</translation>
    </message>
    <message>
        <source>Nothing is left to plan. Add a lot that is wanted, or make one.</source>
        <translation>Es bleibt nichts zu planen. Füge eine gewünschte Partie hinzu oder lege eine an.</translation>
    </message>
    <message>
        <source>&amp;Visits</source>
        <translation>&amp;Gänge</translation>
    </message>
    <message>
        <source>What is &amp;otherwise</source>
        <translation>Was anders is&amp;t</translation>
    </message>
    <message>
        <source>Wh&amp;y not better</source>
        <translation>War&amp;um nicht besser</translation>
    </message>
    <message>
        <source>Plan — Studio Log</source>
        <translation>Plan — Studio Log</translation>
    </message>
    <message>
        <source>Planning…</source>
        <translation>Es wird geplant…</translation>
    </message>
    <message>
        <source>How far the search is</source>
        <translation>Wie weit die Suche ist</translation>
    </message>
    <message>
        <source>Pla&amp;n</source>
        <translation>Pla&amp;nen</translation>
    </message>
    <message>
        <source>Look longe&amp;r</source>
        <translation>Länge&amp;r suchen</translation>
    </message>
    <message>
        <source>&amp;Undo the move</source>
        <translation>&amp;Verschieben zurücknehmen</translation>
    </message>
    <message>
        <source>Take the followed plan bac&amp;k</source>
        <translation>Dem Plan nicht mehr &amp;folgen</translation>
    </message>
    <message>
        <source>Follow i&amp;t again</source>
        <translation>Ihm n&amp;och einmal folgen</translation>
    </message>
    <message>
        <source>&amp;Follow this plan…</source>
        <translation>&amp;Diesem Plan folgen…</translation>
    </message>
    <message>
        <source>&amp;Copy the visits</source>
        <translation>Gänge &amp;kopieren</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>What is wanted, and the studio’s means</source>
        <translation>Was gewünscht ist und was die Werkstatt hat</translation>
    </message>
    <message>
        <source>The plan</source>
        <translation>Der Plan</translation>
    </message>
    <message>
        <source>Write a day and its hours, as in “tomorrow 20 h; 3 Dec 24 h”.</source>
        <translation>Schreibe einen Tag und seine Stunden, wie in „tomorrow 20 h; 3 Dec 24 h“.</translation>
    </message>
    <message>
        <source>{n} vessel</source>
        <translation>{n} Gefäß</translation>
    </message>
    <message>
        <source>{n} vessels</source>
        <translation>{n} Gefäße</translation>
    </message>
    <message>
        <source>Understood: {vessels}, {litres} together</source>
        <translation>Verstanden: {vessels}, zusammen {litres}</translation>
    </message>
    <message>
        <source>Cloth dries in up to {n} hours here.</source>
        <translation>Stoff trocknet hier in höchstens {n} Stunden.</translation>
    </message>
    <message>
        <source>{day} {hours} h</source>
        <translation>{day} {hours} h</translation>
    </message>
    <message>
        <source>Understood: {days}</source>
        <translation>Verstanden: {days}</translation>
    </message>
    <message>
        <source>No plan is better; that is proved.</source>
        <translation>Kein Plan ist besser; das ist bewiesen.</translation>
    </message>
    <message>
        <source>Without them no plan is better; that is proved.</source>
        <translation>Ohne sie ist kein Plan besser; das ist bewiesen.</translation>
    </message>
    <message>
        <source>The best found; whether there is a better one is open.</source>
        <translation>Der beste, der gefunden wurde; ob es einen besseren gibt, ist offen.</translation>
    </message>
    <message>
        <source>Looking for a better one…</source>
        <translation>Ein besserer wird gesucht…</translation>
    </message>
    <message>
        <source>There is no plan.</source>
        <translation>Es gibt keinen Plan.</translation>
    </message>
    <message>
        <source>A step lies where you moved it; “Plan” goes on from there.</source>
        <translation>Ein Schritt liegt, wohin du ihn verschoben hast; „Planen“ geht von dort aus weiter.</translation>
    </message>
    <message>
        <source>{lot} · from {moment}</source>
        <translation>{lot} · ab {moment}</translation>
    </message>
    <message>
        <source>{visits} on {days}; {late}.</source>
        <translation>{visits} ({days}); {late}.</translation>
    </message>
    <message>
        <source>{n} visit</source>
        <translation>{n} Gang</translation>
    </message>
    <message>
        <source>{n} visits</source>
        <translation>{n} Gänge</translation>
    </message>
    <message>
        <source>{n} lot is left out.</source>
        <translation>{n} Partie ist ausgelassen.</translation>
    </message>
    <message>
        <source>{n} lots are left out.</source>
        <translation>{n} Partien sind ausgelassen.</translation>
    </message>
    <message>
        <source>no date is late</source>
        <translation>kein Termin ist zu spät</translation>
    </message>
    <message>
        <source>{lot} cannot go to {wanted}. It stays at {moment}: nearer than that something else would have to move.</source>
        <translation>{lot} kann nicht auf {wanted} gelegt werden. Es bleibt bei {moment}: näher daran müsste sich anderes verschieben.</translation>
    </message>
    <message>
        <source>dates are late by {span} together</source>
        <translation>Termine sind zusammen um {span} zu spät</translation>
    </message>
    <message>
        <source>goals lack {n} piece</source>
        <translation>den Zielen fehlt {n} Stück</translation>
    </message>
    <message>
        <source>goals lack {n} pieces</source>
        <translation>den Zielen fehlen {n} Stücke</translation>
    </message>
    <message>
        <source>{late}, and {short}</source>
        <translation>{late}, und {short}</translation>
    </message>
    <message>
        <source>{lot} cannot go to {wanted}. The nearest moment at which nothing else moves is {moment}.</source>
        <translation>{lot} kann nicht auf {wanted} gelegt werden. Der nächste Zeitpunkt, bei dem sich sonst nichts verschiebt, ist {moment}.</translation>
    </message>
    <message>
        <source>No plan is made yet. Say what you want at the left, then press “Plan”.</source>
        <translation>Noch ist kein Plan gemacht. Sage links, was du willst, dann drücke „Planen“.</translation>
    </message>
    <message>
        <source>Visits of the plan</source>
        <translation>Gänge des Plans</translation>
    </message>
    <message>
        <source>(moved)</source>
        <translation>(verschoben)</translation>
    </message>
    <message>
        <source>{act}, {n} times until {at}</source>
        <translation>{act}, {n}-mal bis {at}</translation>
    </message>
    <message>
        <source>one more bucket of {litres:g} L</source>
        <translation>ein Eimer mehr, {litres:g} L</translation>
    </message>
    <message>
        <source>without {vessel} ({litres:g} L)</source>
        <translation>ohne {vessel} ({litres:g} L)</translation>
    </message>
    <message>
        <source>{n} m more line</source>
        <translation>{n} m Leine mehr</translation>
    </message>
    <message>
        <source>one more burner</source>
        <translation>eine Flamme mehr</translation>
    </message>
    <message>
        <source>weekday evenings {begins}–{ends}</source>
        <translation>werktags abends {begins}–{ends}</translation>
    </message>
    <message>
        <source>&amp;Try it</source>
        <translation>&amp;Versuchen</translation>
    </message>
    <message>
        <source>What &amp;if…</source>
        <translation>Wa&amp;s wäre, wenn…</translation>
    </message>
    <message>
        <source>What if</source>
        <translation>Was wäre, wenn</translation>
    </message>
    <message>
        <source>Tried on a copy, the studio stays as it is:</source>
        <translation>An einer Kopie versucht, die Werkstatt bleibt, wie sie ist:</translation>
    </message>
    <message>
        <source>Close a &amp;day…</source>
        <translation>Einen &amp;Tag schließen…</translation>
    </message>
    <message>
        <source>Close a day</source>
        <translation>Einen Tag schließen</translation>
    </message>
    <message>
        <source>&amp;Come in on a day…</source>
        <translation>An einem Tag &amp;kommen…</translation>
    </message>
    <message>
        <source>Come in on a day</source>
        <translation>An einem Tag kommen</translation>
    </message>
    <message>
        <source>Take all back</source>
        <translation>Alle zurücknehmen</translation>
    </message>
    <message>
        <source>closed on {day}</source>
        <translation>geschlossen am {day}</translation>
    </message>
    <message>
        <source>in on {day}, 09:00–17:00</source>
        <translation>da am {day}, 09:00–17:00</translation>
    </message>
    <message>
        <source>Nothing stands in the way of this plan.</source>
        <translation>Diesem Plan steht nichts im Weg.</translation>
    </message>
    <message>
        <source>Looking for ways out; each is planned before it stands here.</source>
        <translation>Auswege werden gesucht; jeder wird geplant, ehe er hier steht.</translation>
    </message>
    <message>
        <source>No way out was found in this time; that proves nothing.</source>
        <translation>In dieser Zeit fand sich kein Ausweg; das beweist nichts.</translation>
    </message>
    <message>
        <source>Why not better</source>
        <translation>Warum nicht besser</translation>
    </message>
    <message>
        <source>Way out: {words}</source>
        <translation>Ausweg: {words}</translation>
    </message>
    <message>
        <source>Plan with it</source>
        <translation>Damit planen</translation>
    </message>
    <message>
        <source>Plan with it: {words}</source>
        <translation>Damit planen: {words}</translation>
    </message>
    <message>
        <source>8 x linen napkins 42x42cm 175g/m2</source>
        <translation>8 x linen napkins 42x42cm 175g/m2</translation>
    </message>
    <message>
        <source>A table of an old notebook, as CSV or XLSX: each row becomes a lot. Say what each column is; at the right stands what becomes of each row. Nothing is changed until you take it in.</source>
        <translation>Eine Tabelle aus einem alten Heft, als CSV oder XLSX: jede Zeile wird eine Partie. Sage, was jede Spalte ist; rechts steht, was aus jeder Zeile wird. Nichts ändert sich, bis du sie übernimmst.</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>weggelassen</translation>
    </message>
    <message>
        <source>name of the lot</source>
        <translation>Name der Partie</translation>
    </message>
    <message>
        <source>day it was begun</source>
        <translation>Tag des Beginns</translation>
    </message>
    <message>
        <source>day it was fully dry</source>
        <translation>Tag, an dem sie ganz trocken war</translation>
    </message>
    <message>
        <source>day it was used</source>
        <translation>Tag der Verwendung</translation>
    </message>
    <message>
        <source>cloth, in words</source>
        <translation>Stoff, in Worten</translation>
    </message>
    <message>
        <source>fibre</source>
        <translation>Faser</translation>
    </message>
    <message>
        <source>number of pieces</source>
        <translation>Zahl der Stücke</translation>
    </message>
    <message>
        <source>width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>weight of an area</source>
        <translation>Flächengewicht</translation>
    </message>
    <message>
        <source>method</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>shelf or place</source>
        <translation>Regal oder Platz</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>Messwert</translation>
    </message>
    <message>
        <source>Take in an old notebook</source>
        <translation>Ein altes Heft übernehmen</translation>
    </message>
    <message>
        <source>Method of rows that name none</source>
        <translation>Verfahren der Zeilen, die keines nennen</translation>
    </message>
    <message>
        <source>In 6/9/2024 the &amp;month comes first</source>
        <translation>In 6/9/2024 steht der &amp;Monat vorn</translation>
    </message>
    <message>
        <source>&amp;Leave out rows that cannot be read</source>
        <translation>Zei&amp;len weglassen, die nicht zu lesen sind</translation>
    </message>
    <message>
        <source>What becomes of each row</source>
        <translation>Was aus jeder Zeile wird</translation>
    </message>
    <message>
        <source>&amp;Take it in</source>
        <translation>&amp;Aufnehmen</translation>
    </message>
    <message>
        <source>Take it &amp;back</source>
        <translation>&amp;Zurücknehmen</translation>
    </message>
    <message>
        <source>Met&amp;hod of rows that name none</source>
        <translation>Ver&amp;fahren der Zeilen, die keines nennen</translation>
    </message>
    <message>
        <source>What each column is</source>
        <translation>Was jede Spalte ist</translation>
    </message>
    <message>
        <source>Tables and exported studios (*.csv *.txt *.tsv *.xlsx *.zip)</source>
        <translation>Tabellen und ausgegebene Werkstätten (*.csv *.txt *.tsv *.xlsx *.zip)</translation>
    </message>
    <message>
        <source>Choose a table</source>
        <translation>Eine Tabelle wählen</translation>
    </message>
    <message>
        <source>{name}: {told}, {n} rows</source>
        <translation>{name}: {told}, {n} Zeilen</translation>
    </message>
    <message>
        <source>What “{head}” is</source>
        <translation>Was „{head}“ ist</translation>
    </message>
    <message>
        <source>{good} of {every} rows can be taken in.</source>
        <translation>{good} von {every} Zeilen können übernommen werden.</translation>
    </message>
    <message>
        <source>Give it a name, so that the plan can speak of it.</source>
        <translation>Gib ihm einen Namen, damit der Plan davon sprechen kann.</translation>
    </message>
    <message>
        <source>{name} is there already. Choose another name.</source>
        <translation>{name} gibt es schon. Wähle einen anderen Namen.</translation>
    </message>
    <message>
        <source>Goal</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>Change the goal</source>
        <translation>Das Ziel ändern</translation>
    </message>
    <message>
        <source>class, market, order</source>
        <translation>Kurs, Markt, Auftrag</translation>
    </message>
    <message>
        <source> days</source>
        <translation> Tage</translation>
    </message>
    <message>
        <source>ddd d MMMM yyyy</source>
        <translation>ddd d. MMMM yyyy</translation>
    </message>
    <message>
        <source>&amp;What for</source>
        <translation>&amp;Wofür</translation>
    </message>
    <message>
        <source>&amp;Pieces</source>
        <translation>&amp;Stücke</translation>
    </message>
    <message>
        <source>&amp;Cured</source>
        <translation>&amp;Gereift</translation>
    </message>
    <message>
        <source>&amp;By</source>
        <translation>&amp;Bis</translation>
    </message>
    <message>
        <source>&amp;At</source>
        <translation>&amp;Um</translation>
    </message>
    <message>
        <source>A lot that is wanted</source>
        <translation>Eine gewünschte Partie</translation>
    </message>
    <message>
        <source>Class napkins</source>
        <translation>Servietten für den Kurs</translation>
    </message>
    <message>
        <source>Metho&amp;d</source>
        <translation>Me&amp;thode</translation>
    </message>
    <message>
        <source>Say which pieces: so many, of what, how large and how heavy.</source>
        <translation>Sage, welche Stücke: wie viele, woraus, wie groß und wie schwer.</translation>
    </message>
    <message>
        <source>These are too many lines. Make two lots of them.</source>
        <translation>Das sind zu viele Zeilen. Mache zwei Partien daraus.</translation>
    </message>
    <message>
        <source>Change…</source>
        <translation>Ändern…</translation>
    </message>
    <message>
        <source>Change: {words}</source>
        <translation>Ändern: {words}</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Take out: {words}</source>
        <translation>Herausnehmen: {words}</translation>
    </message>
    <message>
        <source>None: every lot is then ready as soon as it can be, in as few visits as can be.</source>
        <translation>Keines: Dann wird jede Partie so bald fertig, wie es geht, in so wenigen Gängen, wie es geht.</translation>
    </message>
    <message>
        <source>Every lot makes its own.</source>
        <translation>Jede Partie macht ihre eigene.</translation>
    </message>
    <message>
        <source>None beside those of the log.</source>
        <translation>Keine neben denen des Buchs.</translation>
    </message>
    <message>
        <source>Fewer visits, or sooner ready</source>
        <translation>Weniger Gänge oder früher fertig</translation>
    </message>
    <message>
        <source>Goals</source>
        <translation>Ziele</translation>
    </message>
    <message>
        <source>Add a &amp;goal…</source>
        <translation>&amp;Ziel hinzufügen…</translation>
    </message>
    <message>
        <source>Lots that are wanted</source>
        <translation>Gewünschte Partien</translation>
    </message>
    <message>
        <source>Add a lot that is &amp;wanted…</source>
        <translation>Gewünschte &amp;Partie hinzufügen…</translation>
    </message>
    <message>
        <source>Shar&amp;e a milk…</source>
        <translation>Mil&amp;ch teilen…</translation>
    </message>
    <message>
        <source>Buckets and pots</source>
        <translation>Eimer und Töpfe</translation>
    </message>
    <message>
        <source>2 buckets of 20 L; pot 40 L</source>
        <translation>2 Eimer zu 20 L; Topf 40 L</translation>
    </message>
    <message>
        <source>not said: nobody waits for a vessel</source>
        <translation>nicht gesagt: niemand wartet auf ein Gefäß</translation>
    </message>
    <message>
        <source>Days of slow drying</source>
        <translation>Tage, an denen es langsam trocknet</translation>
    </message>
    <message>
        <source>tomorrow 20 h; 3 Dec 24 h</source>
        <translation>tomorrow 20 h; 3 Dec 24 h</translation>
    </message>
    <message>
        <source>by the weather, if it is known</source>
        <translation>nach dem Wetter, wenn es bekannt ist</translation>
    </message>
    <message>
        <source>Pairs of hands that work at once</source>
        <translation>Händepaare, die zugleich arbeiten</translation>
    </message>
    <message>
        <source>Open: {hours}.</source>
        <translation>Geöffnet: {hours}.</translation>
    </message>
    <message>
        <source>Hours and means</source>
        <translation>Stunden und Mittel</translation>
    </message>
    <message>
        <source>&amp;Buckets and pots</source>
        <translation>&amp;Eimer und Töpfe</translation>
    </message>
    <message>
        <source>Days of s&amp;low drying</source>
        <translation>Tage, an denen es &amp;langsam trocknet</translation>
    </message>
    <message>
        <source>Pairs of h&amp;ands</source>
        <translation>Händep&amp;aare</translation>
    </message>
    <message>
        <source>What counts &amp;more</source>
        <translation>Was &amp;mehr zählt</translation>
    </message>
    <message>
        <source>fewer visits</source>
        <translation>weniger Gänge</translation>
    </message>
    <message>
        <source>sooner ready</source>
        <translation>früher fertig</translation>
    </message>
    <message>
        <source>{n} lot of the log is to be planned.</source>
        <translation>{n} Partie des Buchs ist zu planen.</translation>
    </message>
    <message>
        <source>{n} lots of the log are to be planned.</source>
        <translation>{n} Partien des Buchs sind zu planen.</translation>
    </message>
    <message>
        <source>{n} of them follows its plan.</source>
        <translation>{n} davon folgt ihrem Plan.</translation>
    </message>
    <message>
        <source>{n} of them follow their plans.</source>
        <translation>{n} davon folgen ihren Plänen.</translation>
    </message>
    <message>
        <source>{n} more cures or is ready: it serves goals.</source>
        <translation>{n} weitere reift oder ist fertig: sie dient Zielen.</translation>
    </message>
    <message>
        <source>{n} more cure or are ready: they serve goals.</source>
        <translation>{n} weitere reifen oder sind fertig: sie dienen Zielen.</translation>
    </message>
    <message>
        <source>{metres:g} m of line</source>
        <translation>{metres:g} m Leine</translation>
    </message>
    <message>
        <source>line without limit</source>
        <translation>Leine ohne Grenze</translation>
    </message>
    <message>
        <source>{n} burner</source>
        <translation>{n} Flamme</translation>
    </message>
    <message>
        <source>{n} burners</source>
        <translation>{n} Flammen</translation>
    </message>
    <message>
        <source>burners without limit</source>
        <translation>Flammen ohne Grenze</translation>
    </message>
    <message>
        <source>{line}, {burners}: change them in the settings.</source>
        <translation>{line}, {burners}: zu ändern in den Einstellungen.</translation>
    </message>
    <message>
        <source>the target</source>
        <translation>die Farbtafel</translation>
    </message>
    <message>
        <source>the swatch</source>
        <translation>die Probe</translation>
    </message>
    <message>
        <source>the patch {name}</source>
        <translation>das Feld {name}</translation>
    </message>
    <message>
        <source>the card</source>
        <translation>die Karte</translation>
    </message>
    <message>
        <source>The card is too bright or too dark in the photo: some of its pixels are clipped. Take it again with less or more light.</source>
        <translation>Die Karte ist im Foto zu hell oder zu dunkel: Manche Bildpunkte sind abgeschnitten. Das Foto mit weniger oder mehr Licht wiederholen.</translation>
    </message>
    <message>
        <source>Relative only: without a target the camera’s own colours stay in it. Compare it with swatches of the same photo, and with nothing else.</source>
        <translation>Nur vergleichend: Ohne Farbtafel bleiben die Eigenfarben der Kamera darin. Nur mit Proben auf demselben Foto vergleichen und mit nichts anderem.</translation>
    </message>
    <message>
        <source>a card</source>
        <translation>eine Karte</translation>
    </message>
    <message>
        <source>{part} % of the swatch is too bright or too dark for the camera: its colour is lost there. Take the photo again with less or more light, without flash.</source>
        <translation>{part} % der Probe sind für die Kamera zu hell oder zu dunkel: Dort ist die Farbe verloren. Das Foto mit weniger oder mehr Licht wiederholen, ohne Blitz.</translation>
    </message>
    <message>
        <source>Only {count} of the 24 patches can be read; the others are too bright or too dark. Take the photo again with less or more light, without flash.</source>
        <translation>Nur {count} der 24 Felder lassen sich lesen; die anderen sind zu hell oder zu dunkel. Das Foto mit weniger oder mehr Licht wiederholen, ohne Blitz.</translation>
    </message>
    <message>
        <source>The neutral patches do not grow darker from white to black. Name the corners clockwise from that of the dark skin patch; or something shines: then take the photo again with one soft light from the side.</source>
        <translation>Die grauen Felder werden von Weiß nach Schwarz nicht dunkler. Die Ecken im Uhrzeigersinn von der des dunklen Hauttons an setzen; oder etwas glänzt: dann das Foto mit einem weichen Licht von der Seite wiederholen.</translation>
    </message>
    <message>
        <source>The patches do not look as their target is published: {apart} CIEDE2000 apart. Look at the corners, and at the light: two kinds of light, shine or a shadow do this, and so does a photo changed by a filter.</source>
        <translation>Die Felder sehen nicht aus wie veröffentlicht: {apart} CIEDE2000 auseinander. Ecken und Licht ansehen: Zweierlei Licht, Glanz oder ein Schatten tun das, auch ein Foto mit Filter.</translation>
    </message>
    <message>
        <source>Something shines on the target ({patches}): better take another photo, lit from the side.</source>
        <translation>Auf der Farbtafel glänzt etwas ({patches}): besser ein weiteres Foto machen, von der Seite beleuchtet.</translation>
    </message>
    <message>
        <source>The patches are foretold only to {apart} CIEDE2000: the colour is rough. A photo in one soft light, without the camera’s effects, does better.</source>
        <translation>Die Felder werden nur auf {apart} CIEDE2000 vorhergesagt: Die Farbe ist grob. Ein Foto in einem weichen Licht, ohne Effekte der Kamera, gelingt besser.</translation>
    </message>
    <message>
        <source>The light falls off by about {fall} % across the target: the swatch may stand in another light than the patches.</source>
        <translation>Das Licht fällt über die Farbtafel um etwa {fall} % ab: Die Probe liegt vielleicht in anderem Licht als die Felder.</translation>
    </message>
    <message>
        <source>{count} patches were left out: clipped.</source>
        <translation>{count} Felder wurden ausgelassen: abgeschnitten.</translation>
    </message>
    <message>
        <source>The light differs by {fall} % between the cards: move the lamp further off.</source>
        <translation>Das Licht unterscheidet sich zwischen den Karten um {fall} %: die Lampe weiter weg stellen.</translation>
    </message>
    <message>
        <source>The swatch is uneven by {part} % in light: a fold, a shadow or an uneven dyeing is in it.</source>
        <translation>Die Probe ist im Licht um {part} % ungleich: Eine Falte, ein Schatten oder eine ungleiche Färbung ist darin.</translation>
    </message>
    <message>
        <source>The swatch shines or has a coarse weave: lay the lamp to the side.</source>
        <translation>Die Probe glänzt oder ist grob gewebt: die Lampe zur Seite stellen.</translation>
    </message>
    <message>
        <source>The photo is in CMYK and its colour profile cannot be read: its colours are not known. Save it as RGB.</source>
        <translation>Das Foto ist in CMYK, und sein Farbprofil lässt sich nicht lesen: Seine Farben sind nicht bekannt. Als RGB speichern.</translation>
    </message>
    <message>
        <source>The photo’s colour profile cannot be read: it was taken as sRGB.</source>
        <translation>Das Farbprofil des Fotos lässt sich nicht lesen: Es gilt als sRGB.</translation>
    </message>
    <message>
        <source>{name} is larger than {most} MB. Save it smaller.</source>
        <translation>{name} ist größer als {most} MB. Kleiner speichern.</translation>
    </message>
    <message>
        <source>{name} is too large for this machine. Save it smaller.</source>
        <translation>{name} ist für diesen Rechner zu groß. Kleiner speichern.</translation>
    </message>
    <message>
        <source>{name} cannot be read as a photo: it is damaged, cut short, or of another kind. Use JPEG, PNG, TIFF or WebP.</source>
        <translation>{name} lässt sich nicht als Foto lesen: beschädigt, abgebrochen oder von anderer Art. JPEG, PNG, TIFF oder WebP nehmen.</translation>
    </message>
    <message>
        <source>{name} has {width} × {height} pixels, more than {most} million. Save it smaller.</source>
        <translation>{name} hat {width} × {height} Bildpunkte, mehr als {most} Millionen. Kleiner speichern.</translation>
    </message>
    <message>
        <source>{name} has no colour, only greys. Save it as an RGB photo.</source>
        <translation>{name} hat keine Farbe, nur Grau. Als RGB-Foto speichern.</translation>
    </message>
    <message>
        <source>{name} is of an unusual kind ({mode}). Save it as an RGB photo.</source>
        <translation>{name} ist von ungewöhnlicher Art ({mode}). Als RGB-Foto speichern.</translation>
    </message>
    <message>
        <source>{name} is in CMYK without a colour profile: its colours are not known. Save it as RGB.</source>
        <translation>{name} ist in CMYK ohne Farbprofil: Die Farben sind nicht bekannt. Als RGB speichern.</translation>
    </message>
    <message>
        <source>{name} is transparent in places. Save it without transparency.</source>
        <translation>{name} ist stellenweise durchsichtig. Ohne Durchsichtigkeit speichern.</translation>
    </message>
    <message>
        <source>The photo has 16 bits a channel; the upper 8 were used.</source>
        <translation>Das Foto hat 16 Bit je Kanal; die oberen 8 wurden genommen.</translation>
    </message>
    <message>
        <source>A corner of {what}, {x},{y}, lies outside the photo of {width} × {height} pixels.</source>
        <translation>Eine Ecke ({what}: {x},{y}) liegt außerhalb des Fotos von {width} × {height} Bildpunkten.</translation>
    </message>
    <message>
        <source>The corners of {what} go round the wrong way: name them clockwise, as it is seen.</source>
        <translation>Die Ecken ({what}) laufen falsch herum: im Uhrzeigersinn setzen, wie man sie sieht.</translation>
    </message>
    <message>
        <source>The corners of {what} are no shape with four sides.</source>
        <translation>Die Ecken ({what}) ergeben kein Viereck.</translation>
    </message>
    <message>
        <source>{what} is too small in the photo: {count} pixels, {least} are the least. Go nearer.</source>
        <translation>{what} ist im Foto zu klein: {count} Bildpunkte, {least} sind das Mindeste. Näher herangehen.</translation>
    </message>
    <message>
        <source>Photos (*.jpg *.jpeg *.png *.tif *.tiff *.webp)</source>
        <translation>Fotos (*.jpg *.jpeg *.png *.tif *.tiff *.webp)</translation>
    </message>
    <message>
        <source>Colour from a photo</source>
        <translation>Farbe aus einem Foto</translation>
    </message>
    <message>
        <source>&amp;Find what is near</source>
        <translation>Ähnliche &amp;suchen</translation>
    </message>
    <message>
        <source>picture.png</source>
        <translation>bild.png</translation>
    </message>
    <message>
        <source>That is no photo. Nothing was changed; drop a JPEG or PNG.</source>
        <translation>Das ist kein Foto. Nichts wurde geändert; ein JPEG oder PNG hierherziehen.</translation>
    </message>
    <message>
        <source>Open a photo</source>
        <translation>Ein Foto öffnen</translation>
    </message>
    <message>
        <source>A target was seen: look whether its points sit on the patches, and correct it.</source>
        <translation>Eine Farbtafel wurde erkannt: prüfen, ob ihre Punkte auf den Feldern sitzen, und zurechtrücken.</translation>
    </message>
    <message>
        <source>No target was seen. Mark its corners yourself, or measure beside a card.</source>
        <translation>Keine Farbtafel wurde erkannt. Ihre Ecken selbst setzen oder neben einer Karte messen.</translation>
    </message>
    <message>
        <source>The frame is too small for nine spots: go nearer.</source>
        <translation>Der Rahmen ist zu klein für neun Stellen: näher herangehen.</translation>
    </message>
    <message>
        <source>The photo, with handles for target, swatch and card</source>
        <translation>Das Foto mit Griffen für Farbtafel, Probe und Karte</translation>
    </message>
    <message>
        <source>Drop a photo here: the swatch beside a 24-patch target, or a grey card.</source>
        <translation>Ein Foto hierherziehen: die Probe neben einer Farbtafel mit 24 Feldern oder einer Graukarte.</translation>
    </message>
    <message>
        <source>dark skin</source>
        <translation>dunkler Hautton</translation>
    </message>
    <message>
        <source>swatch</source>
        <translation>Probe</translation>
    </message>
    <message>
        <source>card</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>beside a 24-patch target</source>
        <translation>neben einer Farbtafel mit 24 Feldern</translation>
    </message>
    <message>
        <source>beside a grey or white card</source>
        <translation>neben einer grauen oder weißen Karte</translation>
    </message>
    <message>
        <source>Reading the photo…</source>
        <translation>Das Foto wird gelesen…</translation>
    </message>
    <message>
        <source>Looking for the target…</source>
        <translation>Die Farbtafel wird gesucht…</translation>
    </message>
    <message>
        <source>Measuring…</source>
        <translation>Es wird gemessen…</translation>
    </message>
    <message>
        <source>Lay swatch and target flat in one soft light from the side, without flash. Then drag the target’s corners to its outer corners, dark skin first, and the swatch’s frame onto even cloth. Space goes to the next handle, arrows move it.</source>
        <translation>Probe und Farbtafel flach in ein weiches Licht von der Seite legen, ohne Blitz. Dann die Ecken auf die äußeren Ecken der Farbtafel ziehen, den dunklen Hautton zuerst, und den Rahmen der Probe auf gleichmäßigen Stoff. Die Leertaste geht zum nächsten Griff, Pfeile bewegen ihn.</translation>
    </message>
    <message>
        <source>&amp;Open a photo…</source>
        <translation>Ein Foto ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&amp;Turn the target</source>
        <translation>Farbtafel &amp;drehen</translation>
    </message>
    <message>
        <source>&amp;Add a card</source>
        <translation>&amp;Karte hinzufügen</translation>
    </message>
    <message>
        <source>As nine &amp;spots: how even it is</source>
        <translation>Als neun &amp;Stellen: wie gleichmäßig es ist</translation>
    </message>
    <message>
        <source>&amp;Keep the photo with the swatch</source>
        <translation>Foto bei der Probe auf&amp;heben</translation>
    </message>
    <message>
        <source>The colour measured: {code}</source>
        <translation>Die gemessene Farbe: {code}</translation>
    </message>
    <message>
        <source>How it is measured</source>
        <translation>Wie gemessen wird</translation>
    </message>
    <message>
        <source>Sample</source>
        <translation>Muster</translation>
    </message>
    <message>
        <source>K/S</source>
        <translation>K/S</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Licht</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Farbstärke</translation>
    </message>
    <message>
        <source>Paste what the instrument gave: L*, a*, b*, or reflectance from 400 to 700 nm by 10, as a table or as CGATS.17. Or open its file.</source>
        <translation>Einfügen, was das Messgerät ausgab: L*, a*, b* oder Remission von 400 bis 700 nm in Zehnerschritten, als Tabelle oder als CGATS.17. Oder seine Datei öffnen.</translation>
    </message>
    <message>
        <source>Tables (*.csv *.txt *.tsv *.cgats);;All files (*)</source>
        <translation>Tabellen (*.csv *.txt *.tsv *.cgats);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>From an instrument</source>
        <translation>Vom Messgerät</translation>
    </message>
    <message>
        <source>&amp;Open a file…</source>
        <translation>Datei ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>The samples are &amp;spots of one cloth: how even it is</source>
        <translation>Die Proben sind &amp;Stellen eines Stoffs: wie gleichmäßig er ist</translation>
    </message>
    <message>
        <source>Instrument</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>what was pasted</source>
        <translation>Eingefügtes</translation>
    </message>
    <message>
        <source>{n} sample</source>
        <translation>{n} Muster</translation>
    </message>
    <message>
        <source>{n} samples</source>
        <translation>{n} Muster</translation>
    </message>
    <message>
        <source>{count} in {name}.</source>
        <translation>{count} in {name}.</translation>
    </message>
    <message>
        <source>no standard</source>
        <translation>kein Standard</translation>
    </message>
    <message>
        <source>Open a file</source>
        <translation>Eine Datei öffnen</translation>
    </message>
    <message>
        <source>What the instrument gave</source>
        <translation>Was das Messgerät ausgab</translation>
    </message>
    <message>
        <source>Samples</source>
        <translation>Muster</translation>
    </message>
    <message>
        <source>Strength to</source>
        <translation>Farbstärke gegen</translation>
    </message>
    <message>
        <source>S&amp;trength to</source>
        <translation>Farb&amp;stärke gegen</translation>
    </message>
    <message>
        <source>I&amp;nstrument</source>
        <translation>Mess&amp;gerät</translation>
    </message>
    <message>
        <source>What the card reflects</source>
        <translation>Was die Karte zurückwirft</translation>
    </message>
    <message>
        <source>Work on the photo</source>
        <translation>Arbeit am Foto</translation>
    </message>
    <message>
        <source>&amp;How it is measured</source>
        <translation>&amp;Wie gemessen wird</translation>
    </message>
    <message>
        <source>What the card &amp;reflects</source>
        <translation>Was die Karte &amp;zurückwirft</translation>
    </message>
    <message>
        <source>Strength needs spectra of the standard and the ground, above 0 and up to 100 %. Nothing was changed.</source>
        <translation>Für die Farbstärke braucht es Spektren von Vorlage und Grund, über 0 und bis 100 %. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The standard {name} is no deeper than the ground. Nothing was changed.</source>
        <translation>Die Vorlage {name} ist nicht tiefer als der Grund. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} is larger than {most} MB. Nothing was changed.</source>
        <translation>{name} ist größer als {most} MB. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} is no text. Nothing was changed; save it as CSV or CGATS.</source>
        <translation>{name} ist kein Text. Nichts wurde geändert; als CSV oder CGATS speichern.</translation>
    </message>
    <message>
        <source>{name} breaks off, or is no CGATS text: its data has no beginning or no end. Nothing was changed.</source>
        <translation>{name} bricht ab oder ist kein CGATS-Text: Seine Daten haben keinen Anfang oder kein Ende. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name}: a line of its data has not as many values as there are fields ({count}). Nothing was changed.</source>
        <translation>{name}: Eine Zeile hat nicht so viele Werte, wie es Felder gibt ({count}). Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} is empty. Nothing was changed.</source>
        <translation>{name} ist leer. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} has more than {most} lines. Nothing was changed.</source>
        <translation>{name} hat mehr als {most} Zeilen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} cannot be read as a table. Nothing was changed; save it as CSV.</source>
        <translation>{name} lässt sich nicht als Tabelle lesen. Nichts wurde geändert; als CSV speichern.</translation>
    </message>
    <message>
        <source>{name} has a line with too many values. Nothing was changed.</source>
        <translation>{name} hat eine Zeile mit zu vielen Werten. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} holds no colours that are understood: it needs columns for 400 to 700 nm by 10, or for L*, a* and b*. Nothing was changed.</source>
        <translation>{name} enthält keine Farben, die sich verstehen lassen: Es braucht Spalten für 400 bis 700 nm in Zehnerschritten oder für L*, a* und b*. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name}, sample {sample}: a reflectance lies outside 0 to {most} %. Nothing was changed.</source>
        <translation>{name}, Muster {sample}: Eine Remission liegt außerhalb von 0 bis {most} %. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>per cent</source>
        <translation>Prozent</translation>
    </message>
    <message>
        <source>fractions from 0 to 1</source>
        <translation>Anteile von 0 bis 1</translation>
    </message>
    <message>
        <source>Reflectance is taken as {scale}.</source>
        <translation>Die Remission gilt als {scale}.</translation>
    </message>
    <message>
        <source>{name}, sample {sample}: {L}, {a}, {b} is no colour of a surface. Nothing was changed.</source>
        <translation>{name}, Muster {sample}: {L}, {a}, {b} ist keine Farbe einer Oberfläche. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The colours were read under D50 and turned to D65, by Bradford.</source>
        <translation>Die Farben wurden unter D50 gemessen und nach Bradford in D65 umgerechnet.</translation>
    </message>
    <message>
        <source>The light is not named: D65 and 10 degree are assumed.</source>
        <translation>Das Licht ist nicht genannt: D65 und 10 Grad sind angenommen.</translation>
    </message>
    <message>
        <source>{name}, sample {sample}: “{text}” is no figure. Nothing was changed.</source>
        <translation>{name}, Muster {sample}: „{text}“ ist keine Zahl. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} could not be read on so small a label. Nothing was printed. Choose a larger one.</source>
        <translation>{code} wäre auf einem so kleinen Etikett nicht zu lesen. Nichts wurde gedruckt. Wähle ein größeres.</translation>
    </message>
    <message>
        <source>b* yellow {figure}</source>
        <translation>b* gelb {figure}</translation>
    </message>
    <message>
        <source>blue {figure}</source>
        <translation>blau {figure}</translation>
    </message>
    <message>
        <source>a* red {figure}</source>
        <translation>a* rot {figure}</translation>
    </message>
    <message>
        <source>green {figure}</source>
        <translation>grün {figure}</translation>
    </message>
    <message>
        <source>begun</source>
        <translation>begonnen</translation>
    </message>
    <message>
        <source>It stands before the row above it. Is the day right?</source>
        <translation>Es steht vor der Zeile darüber. Stimmt der Tag?</translation>
    </message>
    <message>
        <source>It took {took}; the method says {lasts}.</source>
        <translation>Es dauerte {took}; das Verfahren sagt {lasts}.</translation>
    </message>
    <message>
        <source>Nothing is typed. Nothing was changed.</source>
        <translation>Nichts ist getippt. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code}: {n} steps are written down from the card.</source>
        <translation>{code}: {n} Schritte sind von der Karte eingetragen.</translation>
    </message>
    <message>
        <source>Type what stands in the frames, as 9/6 20:15 or 09062015. A time alone is the first one after the time above it. Rows that stay blank are left as they are.</source>
        <translation>Tippe, was in den Kästchen steht, als 9/6 20:15 oder 09062015. Eine Uhrzeit allein ist die nächste nach der Zeit darüber. Leere Zeilen bleiben, wie sie sind.</translation>
    </message>
    <message>
        <source>6/9 20:15</source>
        <translation>6/9 20:15</translation>
    </message>
    <message>
        <source>9/6 20:15</source>
        <translation>9/6 20:15</translation>
    </message>
    <message>
        <source>Times from the card of {code}</source>
        <translation>Zeiten von der Karte von {code}</translation>
    </message>
    <message>
        <source>{title}, begun</source>
        <translation>{title}, begonnen</translation>
    </message>
    <message>
        <source>{title}, ended</source>
        <translation>{title}, beendet</translation>
    </message>
    <message>
        <source>&amp;Write down</source>
        <translation>&amp;Eintragen</translation>
    </message>
    <message>
        <source>Steps of the card</source>
        <translation>Schritte der Karte</translation>
    </message>
    <message>
        <source>&amp;Write down all the same</source>
        <translation>Trotzdem &amp;eintragen</translation>
    </message>
    <message>
        <source>Read the light test of {code}: {weeks}</source>
        <translation>Lichtprobe von {code} ablesen: {weeks}</translation>
    </message>
    <message>
        <source>Hold the test half against the half kept dark, in the same daylight, and grade the change by the grey scale; or read both colours in one photo.</source>
        <translation>Die Prüfhälfte im selben Tageslicht neben die dunkel verwahrte Hälfte halten und die Änderung mit dem Graumaßstab benoten; oder beide Farben auf einem Foto messen.</translation>
    </message>
    <message>
        <source>Write down how long it has really hung.</source>
        <translation>Aufschreiben, wie lange sie wirklich gehangen hat.</translation>
    </message>
    <message>
        <source>{n} week</source>
        <translation>{n} Woche</translation>
    </message>
    <message>
        <source>{n} weeks</source>
        <translation>{n} Wochen</translation>
    </message>
    <message>
        <source>arms</source>
        <translation>Glieder</translation>
    </message>
    <message>
        <source>batches</source>
        <translation>Chargen</translation>
    </message>
    <message>
        <source>replicates</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>as a seed</source>
        <translation>als Startzahl</translation>
    </message>
    <message>
        <source>{value} {what}: a trial takes {least} to {most}. Nothing was changed.</source>
        <translation>{value} {what}: ein Versuch nimmt {least} bis {most}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Of {blocks}.</source>
        <translation>Aus {blocks}.</translation>
    </message>
    <message>
        <source>Soak beans for arm {arm} of {code}</source>
        <translation>Bohnen für Glied {arm} von {code} einweichen</translation>
    </message>
    <message>
        <source>Its cloth is to be dry on {by}, to meet the one bath on {bath}.</source>
        <translation>Der Stoff soll am {by} trocken sein, um am {bath} ins gemeinsame Bad zu kommen.</translation>
    </message>
    <message>
        <source>Its cure is shorter by each day; the report counts the days as they were.</source>
        <translation>Die Reife wird mit jedem Tag kürzer; der Bericht zählt die Tage, wie sie waren.</translation>
    </message>
    <message>
        <source>Dye arm {arm} of {code} on {day}</source>
        <translation>Glied {arm} von {code} färben am {day}</translation>
    </message>
    <message>
        <source>In this order: {tags}.</source>
        <translation>In dieser Reihenfolge: {tags}.</translation>
    </message>
    <message>
        <source>Its cure is longer by each day; the report counts the days as they were.</source>
        <translation>Die Reife wird mit jedem Tag länger; der Bericht zählt die Tage, wie sie waren.</translation>
    </message>
    <message>
        <source>Dye all arms of {code} in one bath</source>
        <translation>Alle Glieder von {code} in einem Bad färben</translation>
    </message>
    <message>
        <source>All cures are longer by each day; the report counts the days as they were.</source>
        <translation>Alle Reifezeiten werden mit jedem Tag länger; der Bericht zählt die Tage, wie sie waren.</translation>
    </message>
    <message>
        <source>Nothing was changed.</source>
        <translation>Nichts wurde geändert.</translation>
    </message>
    <message>
        <source> Swatches of age 0 are a control and have no place on a log scale.</source>
        <translation> Proben vom Alter 0 sind eine Kontrolle und haben auf einer logarithmischen Skala keinen Platz.</translation>
    </message>
    <message>
        <source>{count} swatches with an age are too few for a fit: {least} are the least, 24 say something.{beside}</source>
        <translation>{count} Proben mit einem Alter sind zu wenig für eine Anpassung: {least} sind das Wenigste, 24 sagen etwas.{beside}</translation>
    </message>
    <message>
        <source>All {count} swatches are of one age, {age} d: whether age matters cannot be told from them.{beside}</source>
        <translation>Alle {count} Proben haben ein Alter, {age} d: Ob das Alter zählt, lässt sich daraus nicht sagen.{beside}</translation>
    </message>
    <message>
        <source>Add swatches of other ages, such as 1, 7 and 28 d.</source>
        <translation>Proben anderen Alters hinzunehmen, etwa 1, 7 und 28 d.</translation>
    </message>
    <message>
        <source>{typed} is no trial’s code, such as T26-001. Nothing was changed.</source>
        <translation>{typed} ist kein Kürzel eines Versuchs wie T26-001. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the ages</source>
        <translation>die Alter</translation>
    </message>
    <message>
        <source>{typed} are no ages in days, such as 0, 3, 7, 14, 30, 60, 90. Nothing was changed.</source>
        <translation>{typed} sind keine Alter in Tagen wie 0, 3, 7, 14, 30, 60, 90. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the arm</source>
        <translation>das Glied</translation>
    </message>
    <message>
        <source>Two arms have one name. Nothing was changed.</source>
        <translation>Zwei Glieder haben denselben Namen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A trial compares 2 to {most} arms, not {count}. Nothing was changed; give more ages, or an arm with a name such as “no soy”.</source>
        <translation>Ein Versuch vergleicht 2 bis {most} Glieder, nicht {count}. Nichts wurde geändert; mehr Alter angeben oder ein Glied mit Namen wie „ohne Soja“.</translation>
    </message>
    <message>
        <source>{typed} is none of the arms: {arms}. Nothing was changed.</source>
        <translation>{typed} ist keines der Glieder: {arms}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>the reading</source>
        <translation>der Messwert</translation>
    </message>
    <message>
        <source>{typed} is no reading of {measure}: a figure from {low} to {high}. Nothing was changed.</source>
        <translation>{typed} ist kein Wert für {measure}: eine Zahl von {low} bis {high}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>From {first} to {last} d depth changes by {change}, more than the 2u of one swatch, {two_u}: single swatches can show it.</source>
        <translation>Von {first} bis {last} d ändert sich die Tiefe um {change}, mehr als die 2u einer Probe, {two_u}: Einzelne Proben können es zeigen.</translation>
    </message>
    <message>
        <source>From {first} to {last} d depth changes by {change}, no more than the 2u of one swatch, {two_u}: single swatches cannot show it, only many of them in one photo.</source>
        <translation>Von {first} bis {last} d ändert sich die Tiefe um {change}, nicht mehr als die 2u einer Probe, {two_u}: Einzelne Proben können es nicht zeigen, nur viele auf einem Foto.</translation>
    </message>
    <message>
        <source>the slopes of {count} batches</source>
        <translation>den Steigungen von {count} Chargen</translation>
    </message>
    <message>
        <source>{count} swatches as if each stood apart</source>
        <translation>{count} Proben, als stünde jede für sich</translation>
    </message>
    <message>
        <source>Depth rises by {size} for each tenfold of age (95 % interval {interval}, from {by}).</source>
        <translation>Die Tiefe steigt um {size} je Verzehnfachung des Alters (95-%-Bereich {interval}, aus {by}).</translation>
    </message>
    <message>
        <source>Depth falls by {size} for each tenfold of age (95 % interval {interval}, from {by}).</source>
        <translation>Die Tiefe fällt um {size} je Verzehnfachung des Alters (95-%-Bereich {interval}, aus {by}).</translation>
    </message>
    <message>
        <source> A change of up to {most} may still be hidden in the scatter.</source>
        <translation> Eine Änderung bis {most} kann noch in der Streuung verborgen sein.</translation>
    </message>
    <message>
        <source>No clear effect: for each tenfold of age depth changes by {slope} (95 % interval {interval}, from {by}), and no change at all is among what fits.</source>
        <translation>Keine klare Wirkung: Je Verzehnfachung des Alters ändert sich die Tiefe um {slope} (95-%-Bereich {interval}, aus {by}), und gar keine Änderung passt ebenso.</translation>
    </message>
    <message>
        <source>Each batch has one age only: a difference of the batches looks the same as one of the ages. Dye every age from every batch.</source>
        <translation>Jede Charge hat nur ein Alter: Ein Unterschied der Chargen sieht aus wie einer der Alter. Jedes Alter aus jeder Charge färben.</translation>
    </message>
    <message>
        <source>All swatches are of one batch: how much another batch would differ is not in the interval.</source>
        <translation>Alle Proben sind aus einer Charge: Wie weit eine andere abwiche, ist nicht im Bereich.</translation>
    </message>
    <message>
        <source>No batches are named: how much another batch would differ is not in the interval.</source>
        <translation>Keine Chargen sind genannt: Wie weit eine andere abwiche, ist nicht im Bereich.</translation>
    </message>
    <message>
        <source>Pieces of an arm do not differ at all: there is no scatter to judge the arms by. Look at the readings.</source>
        <translation>Die Stücke eines Glieds unterscheiden sich gar nicht: es gibt keine Streuung, an der die Glieder zu messen wären. Die Ablesungen ansehen.</translation>
    </message>
    <message>
        <source>No clear difference: no arm is told from the control, {control}, beyond chance. A difference of up to {most} may still be hidden in the scatter.</source>
        <translation>Kein klarer Unterschied: kein Glied hebt sich über den Zufall hinaus von der Kontrolle, {control}, ab. Ein Unterschied bis {most} kann noch in der Streuung stecken.</translation>
    </message>
    <message>
        <source>Clearly higher than the control, {control}: {arms}.</source>
        <translation>Klar höher als die Kontrolle, {control}: {arms}.</translation>
    </message>
    <message>
        <source>Clearly lower: {arms}.</source>
        <translation>Klar tiefer: {arms}.</translation>
    </message>
    <message>
        <source>Clearly lower than the control, {control}: {arms}.</source>
        <translation>Klar tiefer als die Kontrolle, {control}: {arms}.</translation>
    </message>
    <message>
        <source>No clear difference: {arms}.</source>
        <translation>Kein klarer Unterschied: {arms}.</translation>
    </message>
    <message>
        <source>{arm}: no clear difference ({value}; 95 % interval {interval}, p {p}).</source>
        <translation>{arm}: kein klarer Unterschied ({value}; 95-%-Bereich {interval}, p {p}).</translation>
    </message>
    <message>
        <source>{arm}: higher by {size} (95 % interval {interval}, p {p}).</source>
        <translation>{arm}: um {size} höher (95-%-Bereich {interval}, p {p}).</translation>
    </message>
    <message>
        <source>{arm}: lower by {size} (95 % interval {interval}, p {p}).</source>
        <translation>{arm}: um {size} tiefer (95-%-Bereich {interval}, p {p}).</translation>
    </message>
    <message>
        <source>The intervals hold for all {count} arms together (Dunnett; each arm once in each of {batches} batches, {df} degrees of freedom).</source>
        <translation>Die Bereiche gelten für alle {count} Glieder zusammen (Dunnett; jedes Glied einmal in jeder von {batches} Chargen, {df} Freiheitsgrade).</translation>
    </message>
    <message>
        <source>The interval is that of a t test, the arm once in each of {batches} batches ({df} degrees of freedom).</source>
        <translation>Der Bereich ist der eines t-Tests, das Glied einmal in jeder von {batches} Chargen ({df} Freiheitsgrade).</translation>
    </message>
    <message>
        <source>The intervals hold for all {count} arms together (Dunnett; from single pieces, {df} degrees of freedom).</source>
        <translation>Die Bereiche gelten für alle {count} Glieder zusammen (Dunnett; aus einzelnen Stücken, {df} Freiheitsgrade).</translation>
    </message>
    <message>
        <source>The interval is that of a t test from single pieces ({df} degrees of freedom).</source>
        <translation>Der Bereich ist der eines t-Tests aus einzelnen Stücken ({df} Freiheitsgrade).</translation>
    </message>
    <message>
        <source>All pieces are of one batch: how much another batch would differ is not in the interval.</source>
        <translation>Alle Stücke sind aus einer Charge: wie sehr eine andere abwiche, steckt nicht in dem Bereich.</translation>
    </message>
    <message>
        <source>Two batches say little of how batches differ: the interval is wide for that.</source>
        <translation>Zwei Chargen sagen wenig darüber, wie Chargen sich unterscheiden: Deshalb ist der Bereich weit.</translation>
    </message>
    <message>
        <source>Left out of this, as some arm has no reading there: {blocks}.</source>
        <translation>Hierbei weggelassen, weil dort einem Glied die Ablesung fehlt: {blocks}.</translation>
    </message>
    <message>
        <source>No more than the 2u of one piece, {two_u}, though clear over many: {arms}.</source>
        <translation>Nicht mehr als die 2u eines Stücks, {two_u}, doch über viele hinweg klar: {arms}.</translation>
    </message>
    <message>
        <source>Line: depth = {intercept} + {slope} log10(age in days){explained}.</source>
        <translation>Gerade: Tiefe = {intercept} + {slope} log10(Alter in Tagen){explained}.</translation>
    </message>
    <message>
        <source>two ages only</source>
        <translation>nur zwei Alter</translation>
    </message>
    <message>
        <source>no swatches repeat an age, or all agree</source>
        <translation>keine Proben wiederholen ein Alter, oder alle stimmen überein</translation>
    </message>
    <message>
        <source>Whether a line fits cannot be tested: {why}.</source>
        <translation>Ob eine Gerade passt, lässt sich nicht prüfen: {why}.</translation>
    </message>
    <message>
        <source>Arms differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p}); two means lie apart where they differ by more than {least}.</source>
        <translation>Die Glieder unterscheiden sich mehr als durch Zufall (zufällige Blöcke, F({df1}, {df2}) = {f}, p {p}); zwei Mittel liegen auseinander, wo sie sich um mehr als {least} unterscheiden.</translation>
    </message>
    <message>
        <source>Arms differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p}).</source>
        <translation>Die Glieder unterscheiden sich mehr als durch Zufall (zufällige Blöcke, F({df1}, {df2}) = {f}, p {p}).</translation>
    </message>
    <message>
        <source>Arms do not differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p}).</source>
        <translation>Die Glieder unterscheiden sich nicht mehr als durch Zufall (zufällige Blöcke, F({df1}, {df2}) = {f}, p {p}).</translation>
    </message>
    <message>
        <source>Arms do not differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p}); two means would have to differ by more than {least}.</source>
        <translation>Die Glieder unterscheiden sich nicht mehr als durch Zufall (zufällige Blöcke, F({df1}, {df2}) = {f}, p {p}); zwei Mittel müssten sich um mehr als {least} unterscheiden.</translation>
    </message>
    <message>
        <source>The batches differ (p {p}): it was right to keep them apart.</source>
        <translation>Die Chargen unterscheiden sich (p {p}): Es war richtig, sie auseinanderzuhalten.</translation>
    </message>
    <message>
        <source>It does not fit (lack of fit p {p}).</source>
        <translation>Sie passt nicht (Abweichung p {p}).</translation>
    </message>
    <message>
        <source>It fits (lack of fit p {p}).</source>
        <translation>Sie passt (Abweichung p {p}).</translation>
    </message>
    <message>
        <source>A curve with a level: from {start} by {rise} to {level}; 90 % of it after {days}.</source>
        <translation>Eine Kurve mit Endwert: von {start} um {rise} auf {level}; 90 % davon nach {days}.</translation>
    </message>
    <message>
        <source>{depth} at {age} d</source>
        <translation>{depth} bei {age} d</translation>
    </message>
    <message>
        <source>; 90 % of the way after {days}</source>
        <translation>; 90 % des Wegs nach {days}</translation>
    </message>
    <message>
        <source>The nearest curve that is only falling: {steps}{when}.</source>
        <translation>Die nächste Kurve, die nur fällt: {steps}{when}.</translation>
    </message>
    <message>
        <source>The nearest curve that is only rising: {steps}{when}.</source>
        <translation>Die nächste Kurve, die nur steigt: {steps}{when}.</translation>
    </message>
    <message>
        <source>{age} d, beyond the oldest swatch: extrapolated</source>
        <translation>{age} d, jenseits der ältesten Probe: verlängert</translation>
    </message>
    <message>
        <source>Robust check: slope {slope} ({interval})</source>
        <translation>Robuste Gegenprobe: Steigung {slope} ({interval})</translation>
    </message>
    <message>
        <source>{base}, which agrees.</source>
        <translation>{base}, stimmt überein.</translation>
    </message>
    <message>
        <source>{base}, which differs by more than a standard error.</source>
        <translation>{base}, weicht um mehr als einen Standardfehler ab.</translation>
    </message>
    <message>
        <source>Look at tag {tags}.</source>
        <translation>Anhänger {tags} ansehen.</translation>
    </message>
    <message>
        <source>Look at line {lines} of the file.</source>
        <translation>Zeile {lines} der Datei ansehen.</translation>
    </message>
    <message>
        <source>Control of age 0, not in the fit: 1 swatch, mean depth {mean}.</source>
        <translation>Kontrolle vom Alter 0, nicht in der Anpassung: 1 Probe, mittlere Tiefe {mean}.</translation>
    </message>
    <message>
        <source>Control of age 0, not in the fit: {count} swatches, mean depth {mean}.</source>
        <translation>Kontrolle vom Alter 0, nicht in der Anpassung: {count} Proben, mittlere Tiefe {mean}.</translation>
    </message>
    <message>
        <source>Left out, with an empty cell: line {lines}.</source>
        <translation>Ausgelassen, mit leerer Zelle: Zeile {lines}.</translation>
    </message>
    <message>
        <source>{told} and more</source>
        <translation>{told} und weitere</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation>{low} bis {high}</translation>
    </message>
    <message>
        <source>chroma C*</source>
        <translation>Buntheit C*</translation>
    </message>
    <message>
        <source>lightness L*</source>
        <translation>Helligkeit L*</translation>
    </message>
    <message>
        <source>strength K/S</source>
        <translation>Farbstärke K/S</translation>
    </message>
    <message>
        <source>by eye</source>
        <translation>nach Augenmaß</translation>
    </message>
    <message>
        <source>depth by eye, 0 to 10</source>
        <translation>Tiefe nach Augenmaß, 0 bis 10</translation>
    </message>
    <message>
        <source>{days} d</source>
        <translation>{days} d</translation>
    </message>
    <message>
        <source>batch {name}</source>
        <translation>Charge {name}</translation>
    </message>
    <message>
        <source>{code} has no tag “{tag}”. Nothing was changed; look at the cloth again.</source>
        <translation>{code} hat keinen Anhänger „{tag}“. Nichts wurde geändert; noch einmal auf den Stoff sehen.</translation>
    </message>
    <message>
        <source>There is no such trial. `trial list` shows every one.</source>
        <translation>Diesen Versuch gibt es nicht. `trial list` zeigt alle.</translation>
    </message>
    <message>
        <source>No light test of {code} runs. Nothing was changed.</source>
        <translation>Von {code} läuft keine Lichtprobe. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} is not cut in halves: one half stays in the dark, to be compared with. Nothing was changed; cut it and say where the test half is.</source>
        <translation>{code} ist nicht in Hälften geschnitten: Eine Hälfte bleibt zum Vergleich im Dunkeln. Nichts wurde geändert; schneiden und sagen, wo die Prüfhälfte ist.</translation>
    </message>
    <message>
        <source>A light test of {code} runs already. Nothing was changed; end it first.</source>
        <translation>Von {code} läuft schon eine Lichtprobe. Nichts wurde geändert; sie zuerst beenden.</translation>
    </message>
    <message>
        <source>{code}: its light test has ended.</source>
        <translation>{code}: Die Lichtprobe ist beendet.</translation>
    </message>
    <message>
        <source>{code}: its light test has begun; it is read after 2, 4 and 8 weeks.</source>
        <translation>{code}: Die Lichtprobe hat begonnen; sie wird nach 2, 4 und 8 Wochen abgelesen.</translation>
    </message>
    <message>
        <source>A trial goes {ways}, and is read by {measures}. Nothing was changed.</source>
        <translation>Ein Versuch geht {ways} und wird gelesen nach {measures}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>From beans to dry cloth it takes 0 to {most} days. Nothing was changed.</source>
        <translation>Von Bohnen bis zum trockenen Stoff dauert es 0 bis {most} Tage. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The batch</source>
        <translation>Die Charge</translation>
    </message>
    <message>
        <source>Each batch has a name of its own. Nothing was changed.</source>
        <translation>Jede Charge hat einen eigenen Namen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A trial lies within ten years. Nothing was changed; look at the day.</source>
        <translation>Ein Versuch liegt innerhalb von zehn Jahren. Nichts wurde geändert; auf den Tag sehen.</translation>
    </message>
    <message>
        <source>Trial {code} is planned: {count} pieces.</source>
        <translation>Versuch {code} ist geplant: {count} Stücke.</translation>
    </message>
    <message>
        <source>The question</source>
        <translation>Die Frage</translation>
    </message>
    <message>
        <source>A trial has one question: say it. Nothing was changed.</source>
        <translation>Ein Versuch hat eine Frage: sie angeben. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Say what changes: the question, the day, the control, or that it is over.</source>
        <translation>Sagen, was sich ändert: die Frage, der Tag, die Kontrolle oder dass er vorbei ist.</translation>
    </message>
    <message>
        <source>Trial {code} is changed.</source>
        <translation>Versuch {code} ist geändert.</translation>
    </message>
    <message>
        <source>{code}: pieces were read already, and a control chosen by what was seen proves nothing. Nothing was changed.</source>
        <translation>{code}: Stücke wurden schon abgelesen, und eine Kontrolle, die nach dem Gesehenen gewählt ist, beweist nichts. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{lot} was taken back. Nothing was changed.</source>
        <translation>{lot} wurde zurückgenommen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code}: pieces of {lot} belong to it.</source>
        <translation>{code}: Stücke von {lot} gehören dazu.</translation>
    </message>
    <message>
        <source>{swatch} was taken back, or is the swatch of another tag. Nothing was changed.</source>
        <translation>{swatch} wurde zurückgenommen oder ist die Probe eines anderen Anhängers. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code}: {swatch} is the swatch of tag {tag}.</source>
        <translation>{code}: {swatch} ist die Probe von Anhänger {tag}.</translation>
    </message>
    <message>
        <source>batch</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>{code} has no {what} {number}: they are 1 to {most}. Nothing was changed.</source>
        <translation>{code} hat kein {what} {number}: Es gibt 1 bis {most}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>An arm is soyed or dyed: soy, dye. Nothing was changed.</source>
        <translation>Ein Glied wird mit Soja behandelt oder gefärbt: soy, dye. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>All of that was done before. Nothing was changed; take the entry back first, or correct its time.</source>
        <translation>All das ist schon getan. Nichts wurde geändert; erst den Eintrag zurücknehmen oder seine Zeit berichtigen.</translation>
    </message>
    <message>
        <source>{code}: arm {arms} is soyed.</source>
        <translation>{code}: Glied {arms} ist mit Soja behandelt.</translation>
    </message>
    <message>
        <source>{code}: arm {arms} is dyed.</source>
        <translation>{code}: Glied {arms} ist gefärbt.</translation>
    </message>
    <message>
        <source>lost</source>
        <translation>verloren</translation>
    </message>
    <message>
        <source>read</source>
        <translation>gelesen</translation>
    </message>
    <message>
        <source>{code}: tag {tag} is {what}, {left} left.</source>
        <translation>{code}: Anhänger {tag} ist {what}, {left} übrig.</translation>
    </message>
    <message>
        <source>Give a figure or a colour for the tag. Nothing was changed.</source>
        <translation>Eine Zahl oder eine Farbe für den Anhänger angeben. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} is read by {measure}: a colour does not say that. Nothing was changed.</source>
        <translation>{code} wird gelesen nach {measure}: Eine Farbe sagt das nicht. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{name} {value} is no reading of {measure}, {low} to {high}. Nothing was changed.</source>
        <translation>{name} {value} ist kein Wert für {measure}, {low} bis {high}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{code} is unveiled already. Nothing was changed.</source>
        <translation>{code} ist schon enthüllt. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{left} tags of {code} are not read yet: they would not be read blind any more. Nothing was unveiled; read them, say which are lost, or say that the blind is broken.</source>
        <translation>{left} Anhänger von {code} sind noch nicht gelesen: Sie würden nicht mehr blind gelesen. Nichts wurde enthüllt; sie lesen, sagen, welche verloren sind, oder sagen, dass die Verblindung gebrochen ist.</translation>
    </message>
    <message>
        <source>{code} is unveiled.</source>
        <translation>{code} ist enthüllt.</translation>
    </message>
    <message>
        <source>{code} is unveiled with {left} tags unread; the journal keeps that the blind is broken.</source>
        <translation>{code} ist enthüllt, {left} Anhänger sind ungelesen; das Tagebuch hält fest, dass die Verblindung gebrochen ist.</translation>
    </message>
    <message>
        <source>{code} was unveiled: what was seen cannot be unseen. Nothing was changed; earlier entries are taken back by their numbers.</source>
        <translation>{code} wurde enthüllt: Was gesehen ist, ist gesehen. Nichts wurde geändert; frühere Einträge werden nach ihrer Nummer zurückgenommen.</translation>
    </message>
    <message>
        <source>More of {code} stands on its plan. Take that back first. Nothing was changed.</source>
        <translation>Auf dem Plan von {code} steht noch mehr. Das zuerst zurücknehmen. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>There is no trial {code}. Nothing was changed; `trial list` shows them.</source>
        <translation>Es gibt keinen Versuch {code}. Nichts wurde geändert; `trial list` zeigt alle.</translation>
    </message>
    <message>
        <source>Several trials hold “{name}”: {known}. Give the code of one.</source>
        <translation>Mehrere Versuche enthalten „{name}“: {known}. Das Kürzel von einem angeben.</translation>
    </message>
    <message>
        <source>There is no trial “{name}”; `trial list` shows them.</source>
        <translation>Es gibt keinen Versuch „{name}“; `trial list` zeigt alle.</translation>
    </message>
    <message>
        <source>{n} soying</source>
        <translation>{n} Sojabad</translation>
    </message>
    <message>
        <source>{n} soyings</source>
        <translation>{n} Sojabäder</translation>
    </message>
    <message>
        <source>{n} dye bath</source>
        <translation>{n} Farbbad</translation>
    </message>
    <message>
        <source>{n} dye baths</source>
        <translation>{n} Farbbäder</translation>
    </message>
    <message>
        <source>{pieces}, {soyings}, {baths}.</source>
        <translation>{pieces}, {soyings}, {baths}.</translation>
    </message>
    <message>
        <source>First beans on {first}, last dyeing on {last}.</source>
        <translation>Erste Bohnen am {first}, letztes Färben am {last}.</translation>
    </message>
    <message>
        <source>Dyeing on {day}.</source>
        <translation>Gefärbt wird am {day}.</translation>
    </message>
    <message>
        <source>The first beans would have had to soak on {day}: choose a later day, or leave out the oldest arm.</source>
        <translation>Die ersten Bohnen hätten am {day} eingeweicht werden müssen: einen späteren Tag wählen oder das älteste Glied weglassen.</translation>
    </message>
    <message>
        <source>Fewer than four ages hardly tell a line from a curve.</source>
        <translation>Weniger als vier Alter unterscheiden kaum eine Gerade von einer Kurve.</translation>
    </message>
    <message>
        <source>No control: add age 0, or an arm without soy.</source>
        <translation>Keine Kontrolle: Alter 0 hinzunehmen oder ein Glied ohne Soja.</translation>
    </message>
    <message>
        <source>Fewer than three batches say little of how batches differ.</source>
        <translation>Weniger als drei Chargen sagen wenig darüber, wie Chargen sich unterscheiden.</translation>
    </message>
    <message>
        <source>Each age meets a bath of its own, and baths differ. Backwards, all meet one bath.</source>
        <translation>Jedes Alter kommt in ein eigenes Bad, und Bäder sind verschieden. Rückwärts kommen alle in ein Bad.</translation>
    </message>
    <message>
        <source>What it can resolve cannot be told: too few pieces.</source>
        <translation>Was er auflösen kann, lässt sich nicht sagen: zu wenig Stücke.</translation>
    </message>
    <message>
        <source>What it can resolve is not known: no trial was read by {sign} yet. It would be {times} times the spread of alike pieces {between}.</source>
        <translation>Was er auflösen kann, ist nicht bekannt: Noch wurde kein Versuch nach {sign} gelesen. Es wäre das {times}-Fache der Streuung gleicher Stücke {between}.</translation>
    </message>
    <message>
        <source>{n} trial</source>
        <translation>{n} Versuch</translation>
    </message>
    <message>
        <source>{n} trials</source>
        <translation>{n} Versuchen</translation>
    </message>
    <message>
        <source>It would show a difference of {least} {sign} {between}, four times of five (alike pieces lay {spread} apart in {count} so far).</source>
        <translation>Er würde {between} einen Unterschied von {least} {sign} zeigen, vier von fünf Malen (gleiche Stücke streuten in {count} bisher um {spread}).</translation>
    </message>
    <message>
        <source>from {first} to {last} d</source>
        <translation>von {first} bis {last} d</translation>
    </message>
    <message>
        <source>between two arms</source>
        <translation>zwischen zwei Gliedern</translation>
    </message>
    <message>
        <source>from the control</source>
        <translation>zur Kontrolle</translation>
    </message>
    <message>
        <source>forwards: soyed together, each age dyed on its day</source>
        <translation>vorwärts: zusammen mit Soja behandelt, jedes Alter an seinem Tag gefärbt</translation>
    </message>
    <message>
        <source>backwards: soyed on days of their own, one bath for all</source>
        <translation>rückwärts: an eigenen Tagen mit Soja behandelt, ein Bad für alle</translation>
    </message>
    <message>
        <source>{n} arm</source>
        <translation>{n} Glied</translation>
    </message>
    <message>
        <source>{n} arms</source>
        <translation>{n} Glieder</translation>
    </message>
    <message>
        <source>{read} of {count} read</source>
        <translation>{read} von {count} gelesen</translation>
    </message>
    <message>
        <source>over</source>
        <translation>vorbei</translation>
    </message>
    <message>
        <source>look at the report</source>
        <translation>den Bericht ansehen</translation>
    </message>
    <message>
        <source>unveil it</source>
        <translation>enthüllen</translation>
    </message>
    <message>
        <source>read tag {tag}</source>
        <translation>Anhänger {tag} lesen</translation>
    </message>
    <message>
        <source>read the pieces blind, once they are dry</source>
        <translation>die Stücke blind lesen, wenn sie trocken sind</translation>
    </message>
    <message>
        <source>dye all arms in one bath: {when}</source>
        <translation>alle Glieder in einem Bad färben: {when}</translation>
    </message>
    <message>
        <source>soak beans for arm {arm}: {when}</source>
        <translation>Bohnen für Glied {arm} einweichen: {when}</translation>
    </message>
    <message>
        <source>dye arm {arm}: {when}</source>
        <translation>Glied {arm} färben: {when}</translation>
    </message>
    <message>
        <source>{n} day late</source>
        <translation>{n} Tag zu spät</translation>
    </message>
    <message>
        <source>{n} days late</source>
        <translation>{n} Tage zu spät</translation>
    </message>
    <message>
        <source>{day}, {late}</source>
        <translation>{day}, {late}</translation>
    </message>
    <message>
        <source>in {n} day</source>
        <translation>in {n} Tag</translation>
    </message>
    <message>
        <source>in {n} days</source>
        <translation>in {n} Tagen</translation>
    </message>
    <message>
        <source>{day}, {ahead}</source>
        <translation>{day}, {ahead}</translation>
    </message>
    <message>
        <source>all dyed on {day}</source>
        <translation>alles gefärbt am {day}</translation>
    </message>
    <message>
        <source>cloth dry on {day}</source>
        <translation>Stoff trocken am {day}</translation>
    </message>
    <message>
        <source>read by {measure}</source>
        <translation>gelesen nach {measure}</translation>
    </message>
    <message>
        <source>{count} replicates in each of: {blocks}</source>
        <translation>{count} Wiederholungen in jeder von: {blocks}</translation>
    </message>
    <message>
        <source>control: {arm}</source>
        <translation>Kontrolle: {arm}</translation>
    </message>
    <message>
        <source>orders and tags drawn from seed {seed}</source>
        <translation>Reihenfolgen und Anhänger gezogen aus Startzahl {seed}</translation>
    </message>
    <message>
        <source>veiled while it is read: only tags are shown</source>
        <translation>verdeckt, solange gelesen wird: Nur Anhänger werden gezeigt</translation>
    </message>
    <message>
        <source>the blind was broken with {left} tags unread</source>
        <translation>die Verblindung wurde gebrochen, {left} Anhänger ungelesen</translation>
    </message>
    <message>
        <source>unveiled after all was read</source>
        <translation>enthüllt, nachdem alles gelesen war</translation>
    </message>
    <message>
        <source>dyed</source>
        <translation>gefärbt</translation>
    </message>
    <message>
        <source>soyed</source>
        <translation>mit Soja behandelt</translation>
    </message>
    <message>
        <source>dyed in part</source>
        <translation>zum Teil gefärbt</translation>
    </message>
    <message>
        <source>soyed: {arms}</source>
        <translation>mit Soja behandelt: {arms}</translation>
    </message>
    <message>
        <source>dyed: {arms}</source>
        <translation>gefärbt: {arms}</translation>
    </message>
    <message>
        <source>belong to it: {named}</source>
        <translation>gehören dazu: {named}</translation>
    </message>
    <message>
        <source>tag {tag}: {figures}</source>
        <translation>Anhänger {tag}: {figures}</translation>
    </message>
    <message>
        <source>{code} was taken back. Nothing was printed.</source>
        <translation>{code} wurde zurückgenommen. Nichts wurde gedruckt.</translation>
    </message>
    <message>
        <source>Tag {tag}</source>
        <translation>Anhänger {tag}</translation>
    </message>
    <message>
        <source>{code} was read blind, and all its tags are read. The report would tell what they are; unveil the trial first.</source>
        <translation>{code} wurde blind gelesen, und alle Anhänger sind gelesen. Der Bericht würde verraten, was sie sind; den Versuch zuerst enthüllen.</translation>
    </message>
    <message>
        <source>{code} is being read blind: {left} of {count} tags are not read yet. The report would tell what they are; unveil the trial first.</source>
        <translation>{code} wird blind gelesen: {left} von {count} Anhängern sind noch nicht gelesen. Der Bericht würde verraten, was sie sind; den Versuch zuerst enthüllen.</translation>
    </message>
    <message>
        <source>Nothing was read yet: there is nothing to report.</source>
        <translation>Noch wurde nichts gelesen: Es gibt nichts zu berichten.</translation>
    </message>
    <message>
        <source>Read blind: {blind} of {count}.</source>
        <translation>Blind gelesen: {blind} von {count}.</translation>
    </message>
    <message>
        <source>The blind was broken with {left} tags unread{why}.</source>
        <translation>Die Verblindung wurde gebrochen, {left} Anhänger ungelesen{why}.</translation>
    </message>
    <message>
        <source>{n} piece has no reading</source>
        <translation>{n} Stück hat keinen Wert</translation>
    </message>
    <message>
        <source>{n} pieces have no reading</source>
        <translation>{n} Stücke haben keinen Wert</translation>
    </message>
    <message>
        <source>{many}: {tags}.</source>
        <translation>{many}: {tags}.</translation>
    </message>
    <message>
        <source>Each age has soy milk of its own: what two milks differ by is in the scatter.</source>
        <translation>Jedes Alter hat eigene Sojamilch: Worin sich zwei Milchen unterscheiden, steckt in der Streuung.</translation>
    </message>
    <message>
        <source>Each age met a bath of its own: what two baths differ by looks like a difference of the ages.</source>
        <translation>Jedes Alter kam in ein eigenes Bad: Worin sich zwei Bäder unterscheiden, sieht aus wie ein Unterschied der Alter.</translation>
    </message>
    <message>
        <source>tag {tag}, {arm}, {block}: {value}</source>
        <translation>Anhänger {tag}, {arm}, {block}: {value}</translation>
    </message>
    <message>
        <source>bar: the mean held against the control’s, the line; 95 % for all together; filled: clear</source>
        <translation>Strich: das Mittel gegen das der Kontrolle, die Linie; 95 % für alle zusammen; gefüllt: klar</translation>
    </message>
    <message>
        <source>dark band: the mean, 95 %; light: a new piece</source>
        <translation>dunkles Band: das Mittel, 95 %; helles: ein neues Stück</translation>
    </message>
    <message>
        <source>dashed: the curve that fits better</source>
        <translation>gestrichelt: die Kurve, die besser passt</translation>
    </message>
    <message>
        <source>{name} does not say what it is to be. Nothing was written; end the name in one of {kinds}.</source>
        <translation>{name} sagt nicht, was es werden soll. Nichts wurde geschrieben; den Namen auf eines von {kinds} enden lassen.</translation>
    </message>
    <message>
        <source>There is too little memory for a picture. Nothing was written.</source>
        <translation>Für ein Bild ist zu wenig Speicher da. Nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>all arms</source>
        <translation>alle Glieder</translation>
    </message>
    <message>
        <source>&amp;Arm</source>
        <translation>&amp;Glied</translation>
    </message>
    <message>
        <source>all batches</source>
        <translation>alle Chargen</translation>
    </message>
    <message>
        <source>&amp;What</source>
        <translation>&amp;Was</translation>
    </message>
    <message>
        <source>&amp;Tag</source>
        <translation>&amp;Anhänger</translation>
    </message>
    <message>
        <source>&amp;Swatch</source>
        <translation>&amp;Probe</translation>
    </message>
    <message>
        <source>&amp;Question</source>
        <translation>&amp;Frage</translation>
    </message>
    <message>
        <source>Da&amp;y</source>
        <translation>&amp;Tag</translation>
    </message>
    <message>
        <source>what happened</source>
        <translation>was geschehen ist</translation>
    </message>
    <message>
        <source>An arm is done</source>
        <translation>Ein Glied ist getan</translation>
    </message>
    <message>
        <source>It answers the reminder of the arm.</source>
        <translation>Es beantwortet die Erinnerung an das Glied.</translation>
    </message>
    <message>
        <source>The lot of pieces</source>
        <translation>Die Partie der Stücke</translation>
    </message>
    <message>
        <source>Ages then count from when this lot was fully dry.</source>
        <translation>Die Alter zählen dann ab dem Tag, an dem diese Partie ganz trocken war.</translation>
    </message>
    <message>
        <source>The swatch of a piece</source>
        <translation>Die Probe eines Stücks</translation>
    </message>
    <message>
        <source>Its colour counts where the tag has no reading of its own.</source>
        <translation>Ihre Farbe zählt, wo der Anhänger keinen eigenen Wert hat.</translation>
    </message>
    <message>
        <source>Change the trial</source>
        <translation>Den Versuch ändern</translation>
    </message>
    <message>
        <source>The day is when the cloth is dry; backwards, when all is dyed.</source>
        <translation>Der Tag ist der, an dem der Stoff trocken ist; rückwärts der, an dem alles gefärbt wird.</translation>
    </message>
    <message>
        <source>Unveil before all is read</source>
        <translation>Enthüllen, bevor alles gelesen ist</translation>
    </message>
    <message>
        <source>What is read later is not read blind any more. Journal and report keep that, and it is not taken back.</source>
        <translation>Was später gelesen wird, ist nicht mehr blind gelesen. Tagebuch und Bericht halten das fest, und es wird nicht zurückgenommen.</translation>
    </message>
    <message>
        <source>forwards: each age dyed on its own day</source>
        <translation>vorwärts: jedes Alter an seinem Tag gefärbt</translation>
    </message>
    <message>
        <source>backwards: all ages meet one bath on one day</source>
        <translation>rückwärts: alle Alter an einem Tag in einem Bad</translation>
    </message>
    <message>
        <source>New trial</source>
        <translation>Neuer Versuch</translation>
    </message>
    <message>
        <source>Question</source>
        <translation>Frage</translation>
    </message>
    <message>
        <source>Does a long cure deepen madder?</source>
        <translation>Macht lange Reife Krapp tiefer?</translation>
    </message>
    <message>
        <source>Cure ages</source>
        <translation>Reifealter</translation>
    </message>
    <message>
        <source>Other arms</source>
        <translation>Weitere Glieder</translation>
    </message>
    <message>
        <source>no soy, alum only</source>
        <translation>ohne Soja, nur Alaun</translation>
    </message>
    <message>
        <source>Control</source>
        <translation>Kontrolle</translation>
    </message>
    <message>
        <source>age 0, else the first other arm</source>
        <translation>Alter 0, sonst das erste andere Glied</translation>
    </message>
    <message>
        <source>Batches</source>
        <translation>Chargen</translation>
    </message>
    <message>
        <source>Pieces of each arm and batch</source>
        <translation>Stücke je Glied und Charge</translation>
    </message>
    <message>
        <source>Days from beans to dry cloth</source>
        <translation>Tage von Bohnen bis zum trockenen Stoff</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>blank means as soon as can be</source>
        <translation>leer heißt so bald wie möglich</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>Read by</source>
        <translation>Gelesen nach</translation>
    </message>
    <message>
        <source>Cure &amp;ages</source>
        <translation>&amp;Reifealter</translation>
    </message>
    <message>
        <source>&amp;Other arms</source>
        <translation>Weitere &amp;Glieder</translation>
    </message>
    <message>
        <source>&amp;Control</source>
        <translation>&amp;Kontrolle</translation>
    </message>
    <message>
        <source>&amp;Batches</source>
        <translation>&amp;Chargen</translation>
    </message>
    <message>
        <source>Pieces of &amp;each</source>
        <translation>&amp;Stücke je Zelle</translation>
    </message>
    <message>
        <source>&amp;Way</source>
        <translation>&amp;Weg</translation>
    </message>
    <message>
        <source>Days to &amp;dry cloth</source>
        <translation>Tage bis &amp;trocken</translation>
    </message>
    <message>
        <source>&amp;Read by</source>
        <translation>Ge&amp;lesen nach</translation>
    </message>
    <message>
        <source>One question; arms that differ in one thing; enough pieces of each.</source>
        <translation>Eine Frage; Glieder, die sich in einem unterscheiden; genug Stücke von jedem.</translation>
    </message>
    <message>
        <source>Read blind — {code}</source>
        <translation>Blind lesen — {code}</translation>
    </message>
    <message>
        <source>Take the piece with this tag:</source>
        <translation>Das Stück mit diesem Anhänger nehmen:</translation>
    </message>
    <message>
        <source>Read its {measure}.</source>
        <translation>Daran lesen: {measure}.</translation>
    </message>
    <message>
        <source>34.2, or L*, a*, b*: 52.1, 31.8, 24.0</source>
        <translation>34,2 oder L*, a*, b*: 52,1; 31,8; 24,0</translation>
    </message>
    <message>
        <source>What was read</source>
        <translation>Was gelesen wurde</translation>
    </message>
    <message>
        <source>The piece is &amp;lost</source>
        <translation>Das Stück ist ver&amp;loren</translation>
    </message>
    <message>
        <source>&amp;Pause</source>
        <translation>&amp;Pause</translation>
    </message>
    <message>
        <source>All are read</source>
        <translation>Alle sind gelesen</translation>
    </message>
    <message>
        <source>{n} tag left</source>
        <translation>noch {n} Anhänger</translation>
    </message>
    <message>
        <source>{n} tags left</source>
        <translation>noch {n} Anhänger</translation>
    </message>
    <message>
        <source>Now the trial can be unveiled.</source>
        <translation>Jetzt kann der Versuch enthüllt werden.</translation>
    </message>
    <message>
        <source>Type what was read, or say that the piece is lost.</source>
        <translation>Eintippen, was gelesen wurde, oder sagen, dass das Stück verloren ist.</translation>
    </message>
    <message>
        <source>{ages} d</source>
        <translation>{ages} d</translation>
    </message>
    <message>
        <source>That is no day, such as 9 July or 2026-07-09.</source>
        <translation>Das ist kein Tag wie 9 July oder 2026-07-09.</translation>
    </message>
    <message>
        <source>No trial is kept yet. Did the long cure matter? A trial plans the pieces, draws their order by chance, rings for each arm, hides what is what while you read, and says what the answer is worth. Begin with “New trial”.</source>
        <translation>Noch ist kein Versuch angelegt. War die lange Reife wichtig? Ein Versuch plant die Stücke, zieht ihre Reihenfolge durch Zufall, läutet für jedes Glied, verdeckt beim Lesen, was was ist, und sagt, was die Antwort wert ist. Mit „Neuer Versuch“ beginnen.</translation>
    </message>
    <message>
        <source>Trials — Studio Log</source>
        <translation>Versuche — Studio Log</translation>
    </message>
    <message>
        <source>&amp;New trial…</source>
        <translation>&amp;Neuer Versuch…</translation>
    </message>
    <message>
        <source>Those that are &amp;over</source>
        <translation>&amp;Abgeschlossene auch</translation>
    </message>
    <message>
        <source>The chosen trial</source>
        <translation>Der gewählte Versuch</translation>
    </message>
    <message>
        <source>Report (*.pdf *.svg *.png *.csv)</source>
        <translation>Bericht (*.pdf *.svg *.png *.csv)</translation>
    </message>
    <message>
        <source>Save the report</source>
        <translation>Den Bericht speichern</translation>
    </message>
    <message>
        <source>&amp;Read blind…</source>
        <translation>&amp;Blind lesen…</translation>
    </message>
    <message>
        <source>An arm is &amp;done…</source>
        <translation>Ein Glied ist &amp;getan…</translation>
    </message>
    <message>
        <source>Un&amp;veil</source>
        <translation>&amp;Enthüllen</translation>
    </message>
    <message>
        <source>Sa&amp;ve the report…</source>
        <translation>Bericht &amp;speichern…</translation>
    </message>
    <message>
        <source>Print &amp;tags…</source>
        <translation>Anhänger &amp;drucken…</translation>
    </message>
    <message>
        <source>&amp;Lot of pieces…</source>
        <translation>Partie der S&amp;tücke…</translation>
    </message>
    <message>
        <source>&amp;Swatch of a piece…</source>
        <translation>&amp;Probe eines Stücks…</translation>
    </message>
    <message>
        <source>Re&amp;mark…</source>
        <translation>Be&amp;merkung…</translation>
    </message>
    <message>
        <source>It is over</source>
        <translation>Er ist vorbei</translation>
    </message>
    <message>
        <source>It goes on</source>
        <translation>Er geht weiter</translation>
    </message>
    <message>
        <source>Arm</source>
        <translation>Glied</translation>
    </message>
    <message>
        <source>Dyeing</source>
        <translation>Färben</translation>
    </message>
    <message>
        <source>Tags, in the order of dipping</source>
        <translation>Anhänger in der Reihenfolge des Färbens</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Anhänger</translation>
    </message>
    <message>
        <source>Batch</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Age</source>
        <translation>Alter</translation>
    </message>
    <message>
        <source>Lot, swatch</source>
        <translation>Partie, Probe</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Spread</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>To the control</source>
        <translation>Zur Kontrolle</translation>
    </message>
    <message>
        <source>95 % interval</source>
        <translation>95-%-Bereich</translation>
    </message>
    <message>
        <source>Arms</source>
        <translation>Glieder</translation>
    </message>
    <message>
        <source>Pieces in the order of reading</source>
        <translation>Stücke in der Reihenfolge des Lesens</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Arms against the control</source>
        <translation>Glieder gegen die Kontrolle</translation>
    </message>
    <message>
        <source>{arm} (control)</source>
        <translation>{arm} (Kontrolle)</translation>
    </message>
    <message>
        <source>control</source>
        <translation>Kontrolle</translation>
    </message>
    <message>
        <source>clear</source>
        <translation>klar</translation>
    </message>
    <message>
        <source>no clear difference</source>
        <translation>kein klarer Unterschied</translation>
    </message>
    <message>
        <source>Next: {next}</source>
        <translation>Als Nächstes: {next}</translation>
    </message>
    <message>
        <source>Pieces, veiled</source>
        <translation>Stücke, verdeckt</translation>
    </message>
    <message>
        <source>even</source>
        <translation>gleichmäßig</translation>
    </message>
    <message>
        <source>slightly uneven</source>
        <translation>leicht ungleichmäßig</translation>
    </message>
    <message>
        <source>visibly uneven</source>
        <translation>sichtbar ungleichmäßig</translation>
    </message>
    <message>
        <source>strongly uneven</source>
        <translation>stark ungleichmäßig</translation>
    </message>
    <message>
        <source>excellent</source>
        <translation>ausgezeichnet</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>poor</source>
        <translation>mäßig</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>schlecht</translation>
    </message>
    <message>
        <source>bands of Studio Log, a proposal</source>
        <translation>Stufen von Studio Log, ein Vorschlag</translation>
    </message>
    <message>
        <source>bands of Chong, Li and Yeung 1992, from memory</source>
        <translation>Stufen von Chong, Li und Yeung 1992, aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>Evenness is told from {least} to {most} spots of one cloth, better 8 or more; there are {count}. Nothing was changed.</source>
        <translation>Die Gleichmäßigkeit zeigt sich an {least} bis {most} Stellen eines Stoffs, besser 8 oder mehr; hier sind es {count}. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{band} over {count} spots: {mean} CIEDE2000 from their mean, {most} at most ({whose})</source>
        <translation>{band} an {count} Stellen: {mean} CIEDE2000 von ihrem Mittel, höchstens {most} ({whose})</translation>
    </message>
    <message>
        <source>no two spots differ in any figure: finer than that was not read</source>
        <translation>keine zwei Stellen unterscheiden sich in einer Ziffer: feiner wurde nicht gelesen</translation>
    </message>
    <message>
        <source>{noise} of the photo’s own grain taken off</source>
        <translation>{noise} eigenes Korn des Fotos abgezogen</translation>
    </message>
    <message>
        <source>RUI {index}: {band} ({whose})</source>
        <translation>RUI {index}: {band} ({whose})</translation>
    </message>
    <message>
        <source>few spots, better {least} or more</source>
        <translation>wenige Stellen, besser {least} oder mehr</translation>
    </message>
    <message>
        <source>{band}, {mean} ΔE00 over {count} spots</source>
        <translation>{band}, {mean} ΔE00 an {count} Stellen</translation>
    </message>
    <message>
        <source>RUI {index}</source>
        <translation>RUI {index}</translation>
    </message>
    <message>
        <source>The control, {arm}, has no reading: nothing can be held against it.</source>
        <translation>Die Kontrolle, {arm}, hat keine Ablesung: nichts lässt sich gegen sie halten.</translation>
    </message>
    <message>
        <source>Only the control was read: there is nothing to hold against it.</source>
        <translation>Nur die Kontrolle wurde abgelesen: es gibt nichts gegen sie zu halten.</translation>
    </message>
    <message>
        <source>There is one piece of each arm and one batch: how far alike pieces lie apart is not known, so no difference can be judged.</source>
        <translation>Es gibt ein Stück je Glied und eine Charge: wie weit gleiche Stücke auseinander liegen, ist nicht bekannt, darum lässt sich kein Unterschied beurteilen.</translation>
    </message>
    <message>
        <source>Fewer than two batches have a reading of every arm: what batches differ by cannot be told from what arms do.</source>
        <translation>Weniger als zwei Chargen haben eine Ablesung jedes Glieds: was Chargen unterscheidet, lässt sich nicht von dem trennen, was die Glieder tun.</translation>
    </message>
    <message>
        <source>There is nothing to hold against the control.</source>
        <translation>Es gibt nichts gegen die Kontrolle zu halten.</translation>
    </message>
    <message>
        <source>There is no such swatch. `swatch list` shows every one.</source>
        <translation>Diese Probe gibt es nicht. `swatch list` zeigt alle.</translation>
    </message>
    <message>
        <source>the name</source>
        <translation>der Name</translation>
    </message>
    <message>
        <source>the place</source>
        <translation>der Platz</translation>
    </message>
    <message>
        <source>the weight</source>
        <translation>das Gewicht</translation>
    </message>
    <message>
        <source>the cure</source>
        <translation>die Reife</translation>
    </message>
    <message>
        <source>the vessel</source>
        <translation>das Gefäß</translation>
    </message>
    <message>
        <source>the vessel’s litres</source>
        <translation>die Liter des Gefäßes</translation>
    </message>
    <message>
        <source>{code} was changed elsewhere while this was open ({what}). Write over it?</source>
        <translation>{code} wurde anderswo geändert, während dies offen war ({what}). Überschreiben?</translation>
    </message>
    <message>
        <source>The server answers again.</source>
        <translation>Der Server antwortet wieder.</translation>
    </message>
    <message>
        <source>Sent: {count} entries made meanwhile.</source>
        <translation>Gesendet: {count} Einträge aus der Zwischenzeit.</translation>
    </message>
    <message>
        <source>{old} is {new} now.</source>
        <translation>{old} heißt jetzt {new}.</translation>
    </message>
    <message>
        <source>What it is about was not written either.</source>
        <translation>Worauf er sich bezieht, wurde auch nicht geschrieben.</translation>
    </message>
    <message>
        <source>Done on this laptop while the server was out of reach, and not written as an act: {what}. {why}</source>
        <translation>Auf diesem Rechner getan, während der Server nicht erreichbar war, und nicht als Handlung geschrieben: {what}. {why}</translation>
    </message>
    <message>
        <source>The setting {name} was changed elsewhere too; that one stands.</source>
        <translation>Die Einstellung {name} wurde auch anderswo geändert; jene gilt.</translation>
    </message>
    <message>
        <source>told from another laptop</source>
        <translation>von einem anderen Rechner gemeldet</translation>
    </message>
    <message>
        <source>The studio lies on {where} now. Carried there and counted: lots {lots}, entries {entries}, photos {photos}. This laptop keeps a copy that follows.</source>
        <translation>Die Werkstatt liegt jetzt auf {where}. Hingebracht und gezählt: Partien {lots}, Einträge {entries}, Fotos {photos}. Dieser Rechner behält eine Kopie, die folgt.</translation>
    </message>
    <message>
        <source>This folder holds a studio of its own. Nothing was changed. Open the one on the server in another folder: studio-log --studio {address}.</source>
        <translation>Dieser Ordner enthält eine eigene Werkstatt. Nichts wurde geändert. Die auf dem Server in einem anderen Ordner öffnen: studio-log --studio {address}.</translation>
    </message>
    <message>
        <source>This laptop works on the studio on {where} now.</source>
        <translation>Dieser Rechner arbeitet jetzt an der Werkstatt auf {where}.</translation>
    </message>
    <message>
        <source>This studio is this laptop’s own already. Nothing was changed.</source>
        <translation>Diese Werkstatt gehört schon diesem Rechner allein. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>The server is out of reach: what other laptops did would be missing here. Nothing was changed. Do it when the server answers.</source>
        <translation>Der Server ist nicht erreichbar: was andere Rechner taten, würde hier fehlen. Nichts wurde geändert. Noch einmal versuchen, wenn er antwortet.</translation>
    </message>
    <message>
        <source>From then on this laptop and the others write two studios that nobody puts together again. Take it back to this laptop?</source>
        <translation>Von da an schreiben dieser Rechner und die anderen zwei Werkstätten, die niemand wieder zusammenführt. Auf diesen Rechner zurückholen?</translation>
    </message>
    <message>
        <source>The studio is this laptop’s own again: every entry was compared with the server’s. What lies on {where} stayed as it is; other laptops go on there.</source>
        <translation>Die Werkstatt gehört wieder diesem Rechner allein: jeder Eintrag wurde mit dem des Servers verglichen. Was auf {where} liegt, blieb, wie es ist; andere Rechner arbeiten dort weiter.</translation>
    </message>
    <message>
        <source>Only one laptop has this studio, and it has to ring. Nothing was changed.</source>
        <translation>Nur ein Rechner hat diese Werkstatt, und er muss läuten. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Reminders ring on this laptop.</source>
        <translation>Erinnerungen läuten auf diesem Rechner.</translation>
    </message>
    <message>
        <source>Reminders do not ring on this laptop; another one has to.</source>
        <translation>Erinnerungen läuten nicht auf diesem Rechner; ein anderer muss es tun.</translation>
    </message>
    <message>
        <source>This studio lies on {where} already. Nothing was changed; take it back to this laptop first.</source>
        <translation>Diese Werkstatt liegt schon auf {where}. Nichts wurde geändert; sie zuerst auf diesen Rechner zurückholen.</translation>
    </message>
    <message>
        <source>1 entry waits to be sent to the server.</source>
        <translation>1 Eintrag wartet darauf, an den Server gesendet zu werden.</translation>
    </message>
    <message>
        <source>{n} entries wait to be sent to the server.</source>
        <translation>{n} Einträge warten darauf, an den Server gesendet zu werden.</translation>
    </message>
    <message>
        <source>The studio’s server — Studio Log</source>
        <translation>Der Server der Werkstatt — Studio Log</translation>
    </message>
    <message>
        <source>Looking at what can be read of it. Nothing is changed by that…</source>
        <translation>Es wird nachgesehen, was sich lesen lässt. Geändert wird dabei nichts …</translation>
    </message>
    <message>
        <source>Reading it into a new file… The damaged one is kept.</source>
        <translation>Es wird in eine neue Datei gelesen … Die beschädigte wird aufgehoben.</translation>
    </message>
    <message>
        <source>Putting the copy in its place… The damaged file is kept.</source>
        <translation>Die Kopie kommt an ihre Stelle… Die beschädigte Datei bleibt erhalten.</translation>
    </message>
    <message>
        <source>The studio’s file is damaged — Studio Log</source>
        <translation>Die Datei der Werkstatt ist beschädigt — Studio Log</translation>
    </message>
    <message>
        <source>&amp;Put what can be read into a new file</source>
        <translation>Was lesbar ist, in eine neue Datei &amp;bringen</translation>
    </message>
    <message>
        <source>Put a &amp;copy back…</source>
        <translation>Eine &amp;Kopie zurückholen …</translation>
    </message>
    <message>
        <source>&amp;Open the studio</source>
        <translation>Werkstatt &amp;öffnen</translation>
    </message>
    <message>
        <source>&amp;Leave it as it is</source>
        <translation>So &amp;lassen</translation>
    </message>
    <message>
        <source>The studio’s file is damaged</source>
        <translation>Die Datei der Werkstatt ist beschädigt</translation>
    </message>
    <message>
        <source>What can be read</source>
        <translation>Was sich lesen lässt</translation>
    </message>
    <message>
        <source>The studio’s server asks for a password</source>
        <translation>Der Server der Werkstatt verlangt ein Kennwort</translation>
    </message>
    <message>
        <source>&amp;Password</source>
        <translation>&amp;Kennwort</translation>
    </message>
    <message>
        <source>It goes into this system’s keyring, and into no file of Studio Log.</source>
        <translation>Es kommt in den Schlüsselbund dieses Systems und in keine Datei von Studio Log.</translation>
    </message>
    <message>
        <source>Password</source>
        <translation>Kennwort</translation>
    </message>
    <message>
        <source>Two or three laptops can work on one studio. It lies in an empty database on a PostgreSQL server then; each laptop keeps a whole copy that follows within a second, goes on without the network, and sends what was done meanwhile.</source>
        <translation>Zwei oder drei Rechner können an einer Werkstatt arbeiten. Sie liegt dann in einer leeren Datenbank auf einem PostgreSQL-Server; jeder Rechner behält eine vollständige Kopie, die binnen einer Sekunde folgt, arbeitet ohne Netz weiter und sendet später, was inzwischen geschah.</translation>
    </message>
    <message>
        <source>This studio is on this laptop alone.</source>
        <translation>Diese Werkstatt liegt nur auf diesem Rechner.</translation>
    </message>
    <message>
        <source>Carrying everything there and counting it… This can take a minute.</source>
        <translation>Alles wird hingebracht und gezählt … Das kann eine Minute dauern.</translation>
    </message>
    <message>
        <source>Asking the server…</source>
        <translation>Der Server wird gefragt …</translation>
    </message>
    <message>
        <source>Several laptops — Studio Log</source>
        <translation>Mehrere Rechner — Studio Log</translation>
    </message>
    <message>
        <source>&amp;Move this studio there</source>
        <translation>Diese Werkstatt &amp;hinbringen</translation>
    </message>
    <message>
        <source>&amp;Open the studio that is there</source>
        <translation>Die Werkstatt dort &amp;öffnen</translation>
    </message>
    <message>
        <source>Reminders &amp;ring on this laptop</source>
        <translation>Erinnerungen &amp;läuten auf diesem Rechner</translation>
    </message>
    <message>
        <source>Take it &amp;back to this laptop…</source>
        <translation>Auf diesen Rechner &amp;zurückholen …</translation>
    </message>
    <message>
        <source>This studio lies on {where}.</source>
        <translation>Diese Werkstatt liegt auf {where}.</translation>
    </message>
    <message>
        <source>The server answers; this laptop’s copy follows it.</source>
        <translation>Der Server antwortet; die Kopie dieses Rechners folgt ihm.</translation>
    </message>
    <message>
        <source>&amp;Address</source>
        <translation>&amp;Adresse</translation>
    </message>
    <message>
        <source>The password goes into this system’s keyring, and into no file.</source>
        <translation>Das Kennwort kommt in den Schlüsselbund dieses Systems und in keine Datei.</translation>
    </message>
    <message>
        <source>Type the server’s address first. It reads {form}.</source>
        <translation>Zuerst die Adresse des Servers eingeben. Sie lautet {form}.</translation>
    </message>
    <message>
        <source>The password is not kept, because this system has no keyring. It was written nowhere, and is asked for anew at each start.</source>
        <translation>Das Passwort wird nicht aufbewahrt, denn dieses System hat keinen Schlüsselbund. Es wurde nirgends aufgeschrieben und wird bei jedem Start neu erfragt.</translation>
    </message>
    <message>
        <source>The password is not kept, because the library that speaks to the system’s keyring is not installed. It was written nowhere, and is asked for anew at each start.</source>
        <translation>Das Passwort wird nicht aufbewahrt, denn die Bibliothek, die mit dem Schlüsselbund des Systems spricht, ist nicht installiert. Es wurde nirgends aufgeschrieben und wird bei jedem Start neu erfragt.</translation>
    </message>
    <message>
        <source>The password is not kept, because this system’s keyring would keep it unprotected. It was written nowhere, and is asked for anew at each start.</source>
        <translation>Das Passwort wird nicht aufbewahrt, denn der Schlüsselbund dieses Systems würde es ungeschützt ablegen. Es wurde nirgends aufgeschrieben und wird bei jedem Start neu erfragt.</translation>
    </message>
    <message>
        <source>The password is not kept, because the system’s keyring stayed locked. It was written nowhere, and is asked for anew at each start. To have it kept, unlock the keyring, then type it again.</source>
        <translation>Das Passwort wird nicht aufbewahrt, denn der Schlüsselbund des Systems blieb verschlossen. Es wurde nirgends aufgeschrieben und wird bei jedem Start neu erfragt. Damit es aufbewahrt wird: den Schlüsselbund aufschließen, dann noch einmal eintippen.</translation>
    </message>
    <message>
        <source>The password is not kept, because the system’s keyring failed. It was written nowhere, and is asked for anew at each start.</source>
        <translation>Das Passwort wird nicht aufbewahrt, denn der Schlüsselbund des Systems hat versagt. Es wurde nirgends aufgeschrieben und wird bei jedem Start neu erfragt.</translation>
    </message>
    <message>
        <source>The system’s keyring does not answer, so the password is most likely not kept. It was written into no file, and is asked for anew at each start unless the keyring still takes it.</source>
        <translation>Der Schlüsselbund des Systems antwortet nicht, das Passwort wird also wohl nicht aufbewahrt. Es steht in keiner Datei und wird bei jedem Start neu erfragt, sofern der Schlüsselbund es nicht doch noch annimmt.</translation>
    </message>
    <message>
        <source>The password could not be taken out of the system’s keyring. Take it out there by hand: it stands under “Studio Log”.</source>
        <translation>Das Passwort ließ sich nicht aus dem Schlüsselbund des Systems nehmen. Nimm es dort von Hand heraus: Es steht unter „Studio Log“.</translation>
    </message>
    <message>
        <source>No lot follows a plan. Nothing was changed.</source>
        <translation>Keine Partie folgt einem Plan. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{n} lot does not follow the plan any more.</source>
        <translation>{n} Partie folgt dem Plan nicht mehr.</translation>
    </message>
    <message>
        <source>{n} lots do not follow the plan any more.</source>
        <translation>{n} Partien folgen dem Plan nicht mehr.</translation>
    </message>
    <message>
        <source>No plan was taken back, or its lots went on since. Nothing was changed.</source>
        <translation>Es wurde kein Plan zurückgenommen, oder seine Partien gingen seither weiter. Nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{n} lot follows the plan again.</source>
        <translation>{n} Partie folgt dem Plan wieder.</translation>
    </message>
    <message>
        <source>{n} lots follow the plan again.</source>
        <translation>{n} Partien folgen dem Plan wieder.</translation>
    </message>
    <message>
        <source>test half against master half: {apart} CIEDE2000, CMC 2:1 {cmc}; {light}, {strong}</source>
        <translation>Prüfhälfte gegen Vergleichshälfte: {apart} CIEDE2000, CMC 2:1 {cmc}; {light}, {strong}</translation>
    </message>
    <message>
        <source>lighter</source>
        <translation>heller</translation>
    </message>
    <message>
        <source>darker</source>
        <translation>dunkler</translation>
    </message>
    <message>
        <source>stronger</source>
        <translation>kräftiger</translation>
    </message>
    <message>
        <source>duller</source>
        <translation>stumpfer</translation>
    </message>
    <message>
        <source>no more than the 2u of both, {two_u}: nothing that is sure</source>
        <translation>nicht mehr als die 2u beider, {two_u}: nichts Sicheres</translation>
    </message>
    <message>
        <source>{size} {way} in {sign}</source>
        <translation>um {size} {way} in {sign}</translation>
    </message>
    <message>
        <source>Chroma C* by days of cure</source>
        <translation>Buntheit C* nach Tagen der Reife</translation>
    </message>
    <message>
        <source>Lightness L* by days of cure</source>
        <translation>Helligkeit L* nach Tagen der Reife</translation>
    </message>
    <message>
        <source>not cured</source>
        <translation>nicht ausgereift</translation>
    </message>
    <message>
        <source>{maker} makes no milk that others could share.</source>
        <translation>{maker} macht keine Milch, die andere teilen könnten.</translation>
    </message>
    <message>
        <source>{name} cannot take the milk of {maker}: it has begun its own, or needs none.</source>
        <translation>{name} kann die Milch von {maker} nicht nehmen: Es hat die eigene begonnen oder braucht keine.</translation>
    </message>
    <message>
        <source>The milk of {maker} is too old for the first coat of {name}, which makes its own.</source>
        <translation>Die Milch von {maker} ist zu alt für den ersten Auftrag von {name}; es macht die eigene.</translation>
    </message>
    <message>
        <source>the milk of {code} serves it</source>
        <translation>die Milch von {code} reicht für sie</translation>
    </message>
    <message>
        <source>One milk for several lots</source>
        <translation>Eine Milch für mehrere Partien</translation>
    </message>
    <message>
        <source>Lots that it serves too</source>
        <translation>Partien, für die sie auch reicht</translation>
    </message>
    <message>
        <source>&amp;Made with</source>
        <translation>&amp;Gemacht mit</translation>
    </message>
    <message>
        <source>It serves t&amp;oo</source>
        <translation>Reicht a&amp;uch für</translation>
    </message>
    <message>
        <source>A lot that is served skips its own beans and straining. It is laid in while the milk is fresh; its further coats come while the milk keeps cold.</source>
        <translation>Wer davon bekommt, lässt die eigenen Bohnen und das Abseihen aus. Eingelegt wird, solange die Milch frisch ist; die weiteren Aufträge kommen, solange sie kühl hält.</translation>
    </message>
    <message>
        <source>Tick at least one lot that the milk serves too.</source>
        <translation>Mindestens eine Partie ankreuzen, für die die Milch auch reicht.</translation>
    </message>
    <message>
        <source>{maker}, for {others} too</source>
        <translation>{maker}, auch für {others}</translation>
    </message>
    <message>
        <source>What the plan counts on does not read. Nothing was changed; plan again.</source>
        <translation>Womit der Plan rechnet, liest sich nicht. Nichts wurde geändert; noch einmal planen.</translation>
    </message>
    <message>
        <source>{goal}, {days} days cured</source>
        <translation>{goal}, {days} Tage gereift</translation>
    </message>
    <message>
        <source>It cannot be moved there.</source>
        <translation>Dorthin lässt es sich nicht verschieben.</translation>
    </message>
    <message>
        <source>no other lots</source>
        <translation>keine andere Partie</translation>
    </message>
    <message>
        <source>one other lot</source>
        <translation>eine andere Partie</translation>
    </message>
    <message>
        <source>{n} other lots</source>
        <translation>{n} andere Partien</translation>
    </message>
    <message>
        <source>{lots} cannot be done in these hours: {why}</source>
        <translation>{lots}: in diesen Stunden nicht zu schaffen. Der Grund: {why}</translation>
    </message>
    <message>
        <source>its first step</source>
        <translation>der erste Schritt</translation>
    </message>
    <message>
        <source>no working hours at all are set, so {step} has no time.</source>
        <translation>es sind gar keine Arbeitszeiten gesetzt, also ist für {step} keine Zeit.</translation>
    </message>
    <message>
        <source>from {moment} on there are no hours left in which {step} could be done.</source>
        <translation>ab {moment} bleiben keine Stunden mehr für {step}.</translation>
    </message>
    <message>
        <source>{step} takes {least} at least and may last {most} at most.</source>
        <translation>{step} braucht mindestens {least} und darf höchstens {most} dauern.</translation>
    </message>
    <message>
        <source>{step} takes {least} at least in this weather and may last {most} at most.</source>
        <translation>{step} braucht bei diesem Wetter mindestens {least} und darf höchstens {most} dauern.</translation>
    </message>
    <message>
        <source>what is recorded leaves no time any more for what follows {step}.</source>
        <translation>was eingetragen ist, lässt keine Zeit mehr für das, was auf {step} folgt.</translation>
    </message>
    <message>
        <source>the plan reaches to {moment}, and {step} would not be over by then.</source>
        <translation>der Plan reicht bis {moment}, und {step} wäre bis dahin nicht vorbei.</translation>
    </message>
    <message>
        <source>{step} lasts {least} to {most}, and on a grid of {grid} no moment lies between.</source>
        <translation>{step} dauert {least} bis {most}, und in einem Raster von {grid} liegt kein Zeitpunkt dazwischen.</translation>
    </message>
    <message>
        <source>after {step} there are no hours for {after} until {moment}, where the plan ends.</source>
        <translation>nach {step} gibt es für {after} keine Stunden bis {moment}, wo der Plan endet.</translation>
    </message>
    <message>
        <source>what follows</source>
        <translation>das, was folgt</translation>
    </message>
    <message>
        <source>The next hours are on {moment}, {late} too late.</source>
        <translation>Die nächsten Stunden sind am {moment}, um {late} zu spät.</translation>
    </message>
    <message>
        <source>{after} has to follow {step}, over since {begun}, by {by}.</source>
        <translation>{after} muss bis {by} auf {step} folgen, vorbei seit {begun}.</translation>
    </message>
    <message>
        <source>{step} has been going since {begun} and should end by {by}.</source>
        <translation>{step} läuft seit {begun} und sollte bis {by} enden.</translation>
    </message>
    <message>
        <source>{after} has to follow {step} within {most}, and nobody is there in time. At best {step} is over on {begun} and {after} due by {by}.</source>
        <translation>{after} muss höchstens {most} nach {step} folgen, und niemand ist rechtzeitig da. Bestenfalls ist {step} am {begun} vorbei und {after} bis {by} fällig.</translation>
    </message>
    <message>
        <source>{step} may last {most} at most, and nobody is there at its end. At best it begins on {begun} and should end by {by}.</source>
        <translation>{step} darf höchstens {most} dauern, und am Ende ist niemand da. Bestenfalls beginnt es am {begun} und sollte bis {by} enden.</translation>
    </message>
    <message>
        <source>It may end at any time now.</source>
        <translation>Es darf jetzt jederzeit enden.</translation>
    </message>
    <message>
        <source>It may end from {moment} on.</source>
        <translation>Es darf ab {moment} enden.</translation>
    </message>
    <message>
        <source>from {first} to {second} no more than {most} may pass</source>
        <translation>zwischen {first} und {second} dürfen höchstens {most} vergehen</translation>
    </message>
    <message>
        <source>{limits}, which these hours and shortest times do not allow.</source>
        <translation>{limits}; das lassen diese Stunden und kürzesten Zeiten nicht zu.</translation>
    </message>
    <message>
        <source>The optimizer is not installed. Add it with: pip install &apos;studio-log[optimizer]&apos;. The planner plans without it too.</source>
        <translation>Der Optimierer ist nicht installiert. Hinzufügen mit: pip install &apos;studio-log[optimizer]&apos;. Geplant wird auch ohne ihn.</translation>
    </message>
    <message>
        <source>The planning process ended before it was done.</source>
        <translation>Der Vorgang des Planens endete, ehe er fertig war.</translation>
    </message>
    <message>
        <source>Planning could not be started ({error}).</source>
        <translation>Das Planen ließ sich nicht beginnen ({error}).</translation>
    </message>
    <message>
        <source>The planning process said what makes no sense.</source>
        <translation>Der Vorgang des Planens sagte, was keinen Sinn ergibt.</translation>
    </message>
    <message>
        <source>The planning process ended before it was done (it gave {code}).</source>
        <translation>Der Vorgang des Planens endete, ehe er fertig war (er gab {code} zurück).</translation>
    </message>
    <message>
        <source>Planning was ended before a plan was found.</source>
        <translation>Das Planen wurde beendet, ehe ein Plan gefunden war.</translation>
    </message>
    <message>
        <source>no metres</source>
        <translation>kein Meter</translation>
    </message>
    <message>
        <source>one metre</source>
        <translation>ein Meter</translation>
    </message>
    <message>
        <source>{n} metres</source>
        <translation>{n} Meter</translation>
    </message>
    <message>
        <source>Mondays</source>
        <translation>montags</translation>
    </message>
    <message>
        <source>Tuesdays</source>
        <translation>dienstags</translation>
    </message>
    <message>
        <source>Wednesdays</source>
        <translation>mittwochs</translation>
    </message>
    <message>
        <source>Thursdays</source>
        <translation>donnerstags</translation>
    </message>
    <message>
        <source>Fridays</source>
        <translation>freitags</translation>
    </message>
    <message>
        <source>Saturdays</source>
        <translation>samstags</translation>
    </message>
    <message>
        <source>Sundays</source>
        <translation>sonntags</translation>
    </message>
    <message>
        <source>the start of {step}</source>
        <translation>Beginn von {step}</translation>
    </message>
    <message>
        <source>the end of {step}</source>
        <translation>Ende von {step}</translation>
    </message>
    <message>
        <source>no {vessel}</source>
        <translation>ohne {vessel}</translation>
    </message>
    <message>
        <source>{much} of line more</source>
        <translation>{much} Leine mehr</translation>
    </message>
    <message>
        <source>{much} of line less</source>
        <translation>{much} Leine weniger</translation>
    </message>
    <message>
        <source>{things} more</source>
        <translation>{things} mehr</translation>
    </message>
    <message>
        <source>{things} less</source>
        <translation>{things} weniger</translation>
    </message>
    <message>
        <source>one session on {day} from {begins} to {ends}</source>
        <translation>ein Gang am {day} von {begins} bis {ends}</translation>
    </message>
    <message>
        <source>no hours on {day}</source>
        <translation>keine Stunden am {day}</translation>
    </message>
    <message>
        <source>hours from {begins} to {ends} every day</source>
        <translation>Stunden von {begins} bis {ends} an jedem Tag</translation>
    </message>
    <message>
        <source>hours from {begins} to {ends} from {first} to {last}</source>
        <translation>Stunden von {begins} bis {ends}, {first} bis {last}</translation>
    </message>
    <message>
        <source>hours from {begins} to {ends} on {days}</source>
        <translation>Stunden von {begins} bis {ends} {days}</translation>
    </message>
    <message>
        <source>{step} of {lot} {length} longer</source>
        <translation>{step} von {lot} um {length} länger</translation>
    </message>
    <message>
        <source>{step} of {lot} for up to {whole} instead of {most}</source>
        <translation>{step} von {lot} bis zu {whole} statt {most}</translation>
    </message>
    <message>
        <source>{length} more of waiting after {step} of {lot}</source>
        <translation>um {length} längeres Warten nach {step} von {lot}</translation>
    </message>
    <message>
        <source>{length} more from {first} to {second} of {lot}</source>
        <translation>{length} mehr zwischen {first} und {second} von {lot}</translation>
    </message>
    <message>
        <source>{goal} {length} later</source>
        <translation>{goal} um {length} später</translation>
    </message>
    <message>
        <source>{pieces} for {goal}</source>
        <translation>{pieces} für {goal}</translation>
    </message>
    <message>
        <source>{pieces} for {goal} instead of {wanted}</source>
        <translation>{pieces} für {goal} statt {wanted}</translation>
    </message>
    <message>
        <source>{pieces} for {goal} cured {n} days</source>
        <translation>{pieces} für {goal}, nur {n} Tage gereift</translation>
    </message>
    <message>
        <source>{pieces} for {goal} cured 1 day</source>
        <translation>{pieces} für {goal}, nur 1 Tag gereift</translation>
    </message>
    <message>
        <source>{lot} given up</source>
        <translation>{lot} aufgegeben</translation>
    </message>
    <message>
        <source>{lot} left out</source>
        <translation>{lot} weggelassen</translation>
    </message>
    <message>
        <source>{lot} begun {length} later at the earliest</source>
        <translation>{lot} frühestens um {length} später begonnen</translation>
    </message>
    <message>
        <source>{lot} due {length} later</source>
        <translation>{lot} um {length} später fällig</translation>
    </message>
    <message>
        <source>a plan that reaches {days} further</source>
        <translation>ein Plan, der {days} weiter reicht</translation>
    </message>
    <message>
        <source>{kind} is no kind of vessel.</source>
        <translation>{kind} ist keine Art von Gefäß.</translation>
    </message>
    <message>
        <source>There are {n} vessels already; no more are planned with.</source>
        <translation>Es gibt schon {n} Gefäße; mit mehr wird nicht geplant.</translation>
    </message>
    <message>
        <source>There is no vessel {vessel}.</source>
        <translation>Es gibt kein Gefäß {vessel}.</translation>
    </message>
    <message>
        <source>There is not so much of {store} that could go.</source>
        <translation>Von {store} ist nicht so viel da, das wegfallen könnte.</translation>
    </message>
    <message>
        <source>A plan is for 1 to {n} pairs of hands.</source>
        <translation>Ein Plan gilt für 1 bis {n} Händepaare.</translation>
    </message>
    <message>
        <source>{day} {year} is no day of the time that is planned.</source>
        <translation>{day} {year} liegt nicht in der Zeit, die geplant wird.</translation>
    </message>
    <message>
        <source>A plan cannot reach so far ahead; take a coarser grid or fewer days.</source>
        <translation>So weit voraus kann ein Plan nicht reichen; nimm ein gröberes Raster oder weniger Tage.</translation>
    </message>
    <message>
        <source>{step} of {lot} has no longest time.</source>
        <translation>{step} von {lot} hat keine längste Zeit.</translation>
    </message>
    <message>
        <source>The longest time of {step} of {lot} is a rule.</source>
        <translation>Die längste Zeit von {step} von {lot} ist eine Regel.</translation>
    </message>
    <message>
        <source>How soon something follows {step} of {lot} is a rule.</source>
        <translation>Wie bald etwas auf {step} von {lot} folgt, ist eine Regel.</translation>
    </message>
    <message>
        <source>{lot} has no limit from {first} to {second}.</source>
        <translation>{lot} hat keine Grenze von {first} bis {second}.</translation>
    </message>
    <message>
        <source>The limit of {lot} from {first} to {second} is a rule.</source>
        <translation>Die Grenze von {lot} von {first} bis {second} ist eine Regel.</translation>
    </message>
    <message>
        <source>The lots hold fewer than {n} pieces for {goal}.</source>
        <translation>Die Partien haben weniger als {n} Stücke für {goal}.</translation>
    </message>
    <message>
        <source>{goal} wants {n} pieces, not {more} or more.</source>
        <translation>{goal} verlangt {n} Stücke, nicht {more} oder mehr.</translation>
    </message>
    <message>
        <source>There are {n} goals already; no more are planned with.</source>
        <translation>Es gibt schon {n} Ziele; mit mehr wird nicht geplant.</translation>
    </message>
    <message>
        <source>{goal}, {n} days cured</source>
        <translation>{goal}, {n} Tage gereift</translation>
    </message>
    <message>
        <source>{goal} is a goal already.</source>
        <translation>{goal} ist schon ein Ziel.</translation>
    </message>
    <message>
        <source>{lot} has no date of its own.</source>
        <translation>{lot} hat keinen eigenen Termin.</translation>
    </message>
    <message>
        <source>There is no lot {lot}.</source>
        <translation>Es gibt keine Partie {lot}.</translation>
    </message>
    <message>
        <source>There is no goal {goal}.</source>
        <translation>Es gibt kein Ziel {goal}.</translation>
    </message>
    <message>
        <source>{lot} has no step {step}.</source>
        <translation>{lot} hat keinen Schritt {step}.</translation>
    </message>
    <message>
        <source>vessels for {n} at a time</source>
        <translation>Gefäße für {n} zugleich</translation>
    </message>
    <message>
        <source>{lots} are recorded as running in {much} of {kind} together; the studio has {there}. Correct the record or add what is missing.</source>
        <translation>{lots} laufen den Einträgen nach zusammen auf {much} ({kind}); die Werkstatt hat {there}. Berichtige die Einträge oder ergänze, was fehlt.</translation>
    </message>
    <message>
        <source>Everything stays as it was planned.</source>
        <translation>Alles bleibt, wie es geplant war.</translation>
    </message>
    <message>
        <source>Everything else stays.</source>
        <translation>Alles andere bleibt.</translation>
    </message>
    <message>
        <source>{what} is no longer late; it was {before} late.</source>
        <translation>{what} ist nicht mehr zu spät; vorher war es um {before} zu spät.</translation>
    </message>
    <message>
        <source>{what} is {span} late; it was in time.</source>
        <translation>{what} ist um {span} zu spät; vorher war es rechtzeitig.</translation>
    </message>
    <message>
        <source>{what} is {span} late; it was {before} late.</source>
        <translation>{what} ist um {span} zu spät; vorher war es um {before} zu spät.</translation>
    </message>
    <message>
        <source>{what} is {span} late through {lots}; it was in time.</source>
        <translation>{what} ist durch {lots} um {span} zu spät; vorher war es rechtzeitig.</translation>
    </message>
    <message>
        <source>{what} is {span} late through {lots}; it was {before} late.</source>
        <translation>{what} ist durch {lots} um {span} zu spät; vorher war es um {before} zu spät.</translation>
    </message>
    <message>
        <source>{lots} are no longer planned.</source>
        <translation>{lots} sind nicht mehr geplant.</translation>
    </message>
    <message>
        <source>{lots} is no longer planned.</source>
        <translation>{lots} ist nicht mehr geplant.</translation>
    </message>
    <message>
        <source>{lots} are planned for the first time.</source>
        <translation>{lots} sind zum ersten Mal geplant.</translation>
    </message>
    <message>
        <source>{lots} is planned for the first time.</source>
        <translation>{lots} ist zum ersten Mal geplant.</translation>
    </message>
    <message>
        <source>Moved: {lot}&apos;s {steps} from {old} to {new}, because {why}.</source>
        <translation>Verschoben: {steps} von {lot}, von {old} auf {new}; der Grund: {why}.</translation>
    </message>
    <message>
        <source>Moved: {lot}&apos;s {steps} from {old} to {new}.</source>
        <translation>Verschoben: {steps} von {lot}, von {old} auf {new}.</translation>
    </message>
    <message>
        <source>Moved: {n} visits of {lot}, the first from {old} to {new}, because {why}.</source>
        <translation>Verschoben: {n} Gänge von {lot}, der erste von {old} auf {new}; der Grund: {why}.</translation>
    </message>
    <message>
        <source>Moved: {n} visits of {lot}, the first from {old} to {new}.</source>
        <translation>Verschoben: {n} Gänge von {lot}, der erste von {old} auf {new}.</translation>
    </message>
    <message>
        <source>Moved besides: visits of {lots}.</source>
        <translation>Außerdem verschoben: Gänge von {lots}.</translation>
    </message>
    <message>
        <source>You come in {times} instead of {was}.</source>
        <translation>Du kommst {times} statt {was}-mal.</translation>
    </message>
    <message>
        <source>once</source>
        <translation>einmal</translation>
    </message>
    <message>
        <source>twice</source>
        <translation>zweimal</translation>
    </message>
    <message>
        <source>{n} times</source>
        <translation>{n}-mal</translation>
    </message>
    <message>
        <source>{lot}&apos;s {steps} are in {taken} instead of {left}.</source>
        <translation>{steps} von {lot} sind in {taken} statt in {left}.</translation>
    </message>
    <message>
        <source>{lot}&apos;s {steps} is in {taken} instead of {left}.</source>
        <translation>{steps} von {lot} ist in {taken} statt in {left}.</translation>
    </message>
    <message>
        <source>No plan was found in this time, and it is not proved that there is none. Give it more seconds, more days, or longer hours.</source>
        <translation>In dieser Zeit fand sich kein Plan, und dass es keinen gibt, ist nicht bewiesen. Gib mehr Sekunden, mehr Tage oder längere Stunden.</translation>
    </message>
    <message>
        <source>The lots cannot all be done in these days, hours and vessels; that is proved. Each of them alone could. Nothing was planned.</source>
        <translation>Alle Partien zusammen sind in diesen Tagen, Stunden und Gefäßen nicht zu schaffen; das ist bewiesen. Jede für sich ginge. Es wurde nichts geplant.</translation>
    </message>
    <message>
        <source>{lot} cannot be done: its shortest times together are longer than the longest times, the recorded moments or the horizon allow. Nothing was planned.</source>
        <translation>{lot} ist nicht zu schaffen: die kürzesten Zeiten sind zusammen länger, als die längsten Zeiten, die eingetragenen Zeitpunkte oder das Ende des Plans zulassen. Es wurde nichts geplant.</translation>
    </message>
    <message>
        <source>{lot} cannot be done: its shortest times together (about {steps}) are longer than the longest times, the recorded moments or the horizon allow. Nothing was planned.</source>
        <translation>{lot} ist nicht zu schaffen: die kürzesten Zeiten (um {steps}) sind zusammen länger, als die längsten Zeiten, die eingetragenen Zeitpunkte oder das Ende des Plans zulassen. Es wurde nichts geplant.</translation>
    </message>
    <message>
        <source>{lot} cannot be done with the milk that it is to use or make: it is no longer good, or not made, whenever the lots that share it could come. Give the lot another milk. Nothing was planned.</source>
        <translation>{lot} ist mit der Milch, die es brauchen oder machen soll, nicht zu schaffen: sie ist nicht mehr gut oder nicht gemacht, wann immer die Partien kommen könnten, die sie teilen. Gib der Partie eine andere Milch. Es wurde nichts geplant.</translation>
    </message>
    <message>
        <source>{lot} cannot be done in these hours, even if everything else were free: {step} is running, and no working hours fall in time for what follows.</source>
        <translation>{lot} ist in diesen Stunden nicht zu schaffen, auch wenn alles andere frei wäre: {step} läuft, und für das, was folgt, gibt es rechtzeitig keine Arbeitszeit.</translation>
    </message>
    <message>
        <source>{lot} cannot be done in these hours and days, even if everything else were free.</source>
        <translation>{lot} ist in diesen Stunden und Tagen nicht zu schaffen, auch wenn alles andere frei wäre.</translation>
    </message>
    <message>
        <source>The plan does not fit the studio as it is now: {lot} has no place.</source>
        <translation>Der Plan passt nicht zur Werkstatt, wie sie jetzt ist: für {lot} ist kein Platz.</translation>
    </message>
    <message>
        <source>{step} of {lot} cannot be moved: it is not still to come.</source>
        <translation>{step} von {lot} lässt sich nicht verschieben: es steht nicht mehr bevor.</translation>
    </message>
    <message>
        <source>{step} of {lot} cannot be moved while everything else stays. Nothing was moved.</source>
        <translation>{step} von {lot} lässt sich nicht verschieben, solange alles andere bleibt. Nichts wurde verschoben.</translation>
    </message>
    <message>
        <source>There is no plan in which something could be moved.</source>
        <translation>Es gibt keinen Plan, in dem etwas zu verschieben wäre.</translation>
    </message>
    <message>
        <source>{step} of {lot} cannot begin at {moment} while everything else stays. Nothing was moved.</source>
        <translation>{step} von {lot} kann nicht um {moment} beginnen, solange alles andere bleibt. Nichts wurde verschoben.</translation>
    </message>
    <message>
        <source>{step} of {lot} cannot begin outside the hours. Nothing was moved.</source>
        <translation>{step} von {lot} kann nicht außerhalb der Stunden beginnen. Nichts wurde verschoben.</translation>
    </message>
    <message>
        <source>coming {n} times more, {length} in all</source>
        <translation>noch {n} Gänge, {length} im Ganzen</translation>
    </message>
    <message>
        <source>{n} longest times passed, by up to {most}</source>
        <translation>{n} längste Zeiten überschritten, um bis zu {most}</translation>
    </message>
    <message>
        <source>{length} beyond what is advised</source>
        <translation>{length} mehr als empfohlen</translation>
    </message>
    <message>
        <source>{length} outside the hours of that day</source>
        <translation>{length} außerhalb der Stunden dieses Tags</translation>
    </message>
    <message>
        <source>coming once more, for {length} on a day without hours</source>
        <translation>noch ein Gang, {length} an einem Tag ohne Stunden</translation>
    </message>
    <message>
        <source>no days with up to {most} beyond the present hours</source>
        <translation>kein Tag mit bis zu {most} über die jetzigen Stunden hinaus</translation>
    </message>
    <message>
        <source>one day with up to {most} beyond the present hours</source>
        <translation>ein Tag mit bis zu {most} über die jetzigen Stunden hinaus</translation>
    </message>
    <message>
        <source>{n} days with up to {most} beyond the present hours</source>
        <translation>{n} Tage mit bis zu {most} über die jetzigen Stunden hinaus</translation>
    </message>
    <message>
        <source>{thing} to find or buy</source>
        <translation>{thing}, zu finden oder zu kaufen</translation>
    </message>
    <message>
        <source>{metres} m of line to hang up</source>
        <translation>{metres} m Leine, zu spannen</translation>
    </message>
    <message>
        <source>somebody who helps whenever two have to work at once</source>
        <translation>jemand, der hilft, wann immer zwei zugleich arbeiten müssen</translation>
    </message>
    <message>
        <source>the date of {whose} moves</source>
        <translation>der Termin von {whose} verschiebt sich</translation>
    </message>
    <message>
        <source>{n} fewer pieces for {goal}</source>
        <translation>{n} Stücke weniger für {goal}</translation>
    </message>
    <message>
        <source>one fewer piece for {goal}</source>
        <translation>ein Stück weniger für {goal}</translation>
    </message>
    <message>
        <source>{pieces} are {days} short of the cure</source>
        <translation>{pieces} reifen {days} zu kurz</translation>
    </message>
    <message>
        <source>{pieces} is {days} short of the cure</source>
        <translation>{pieces} reift {days} zu kurz</translation>
    </message>
    <message>
        <source>{lot} is lost, with {pieces}</source>
        <translation>{lot} ist verloren: {pieces}</translation>
    </message>
    <message>
        <source>{lot} is not done, with {pieces}</source>
        <translation>{lot} wird nicht gemacht: {pieces}</translation>
    </message>
    <message>
        <source>a plan that reaches further ahead</source>
        <translation>ein Plan, der weiter voraus reicht</translation>
    </message>
    <message>
        <source>{lot}: {step} has no end, though {other} has begun.</source>
        <translation>{lot}: {step} hat kein Ende, obwohl {other} begonnen hat.</translation>
    </message>
    <message>
        <source>{lot}: {other} begins before {step} ends.</source>
        <translation>{lot}: {other} beginnt, ehe {step} endet.</translation>
    </message>
    <message>
        <source>{lot}: {step} has lasted {lasted} min, longer than its {most}; the rest is planned all the same.</source>
        <translation>{lot}: {step} hat {lasted} min gedauert, länger als die erlaubten {most}; der Rest wird trotzdem geplant.</translation>
    </message>
    <message>
        <source>{lot}: steps before the last recorded one count as done.</source>
        <translation>{lot}: Schritte vor dem letzten eingetragenen gelten als getan.</translation>
    </message>
    <message>
        <source>the line is full until {moment}</source>
        <translation>die Leine ist bis {moment} voll</translation>
    </message>
    <message>
        <source>the burners are taken until {moment}</source>
        <translation>die Flammen sind bis {moment} belegt</translation>
    </message>
    <message>
        <source>your hands are full until {moment}</source>
        <translation>deine Hände sind bis {moment} voll</translation>
    </message>
    <message>
        <source>that moment has passed</source>
        <translation>dieser Zeitpunkt ist vorbei</translation>
    </message>
    <message>
        <source>{lot} is not to begin before {moment}</source>
        <translation>{lot} soll nicht vor {moment} beginnen</translation>
    </message>
    <message>
        <source>{step} is not over before {moment}</source>
        <translation>{step} ist nicht vor {moment} vorbei</translation>
    </message>
    <message>
        <source>{step} is to end by {moment}</source>
        <translation>{step} soll bis {moment} enden</translation>
    </message>
    <message>
        <source>it has to be by {moment}</source>
        <translation>es muss bis {moment} sein</translation>
    </message>
    <message>
        <source>what comes before</source>
        <translation>das, was davor kommt</translation>
    </message>
    <message>
        <source>those are no working hours</source>
        <translation>das sind keine Arbeitszeiten</translation>
    </message>
    <message>
        <source>the working hours end before</source>
        <translation>die Arbeitszeit endet davor</translation>
    </message>
    <message>
        <source>{vessel} is taken until {moment}</source>
        <translation>{vessel} ist bis {moment} belegt</translation>
    </message>
    <message>
        <source>Only the first {n} stirs are given.</source>
        <translation>Nur die ersten {n} Male Rühren sind angegeben.</translation>
    </message>
    <message>
        <source>{lot}&apos;s {step} is to be stirred on {moment}, and your hands are full for an hour before and after.</source>
        <translation>{step} von {lot} ist {moment} zu rühren, und eine Stunde davor und danach sind deine Hände voll.</translation>
    </message>
    <message>
        <source>{lot}&apos;s {step} is to be stirred {n} times from {first} to {last}, and your hands are full for an hour before and after each.</source>
        <translation>{step} von {lot} ist von {first} bis {last} {n}-mal zu rühren, und jeweils eine Stunde davor und danach sind deine Hände voll.</translation>
    </message>
    <message>
        <source>{fault} Nothing was planned.</source>
        <translation>{fault} Es wurde nichts geplant.</translation>
    </message>
    <message>
        <source>A plan broke a rule and was not taken: {faults}</source>
        <translation>Ein Plan brach eine Regel und wurde nicht genommen: {faults}</translation>
    </message>
    <message>
        <source>Planning ended by a fault of this program ({words}).</source>
        <translation>Das Planen endete durch einen Fehler dieses Programms ({words}).</translation>
    </message>
    <message>
        <source>then there is a plan</source>
        <translation>dann gibt es einen Plan</translation>
    </message>
    <message>
        <source>no date is late then</source>
        <translation>dann ist kein Termin zu spät</translation>
    </message>
    <message>
        <source>then there is a plan, and no date is late</source>
        <translation>dann gibt es einen Plan, und kein Termin ist zu spät</translation>
    </message>
    <message>
        <source>{late} late instead of {before}</source>
        <translation>um {late} zu spät statt um {before}</translation>
    </message>
    <message>
        <source>{late} late instead of {before}, all dates together</source>
        <translation>um {late} zu spät statt um {before}, alle Termine zusammen</translation>
    </message>
    <message>
        <source>then there is a plan, and it is {late} late</source>
        <translation>dann gibt es einen Plan, und er ist um {late} zu spät</translation>
    </message>
    <message>
        <source>then there is a plan, and it is {late} late, all dates together</source>
        <translation>dann gibt es einen Plan, und er ist um {late} zu spät, alle Termine zusammen</translation>
    </message>
    <message>
        <source>bucket</source>
        <translation>Eimer</translation>
    </message>
    <message>
        <source>a bucket</source>
        <translation>einen Eimer</translation>
    </message>
    <message>
        <source>a bucket of {litres} L</source>
        <translation>ein Eimer von {litres} L</translation>
    </message>
    <message>
        <source>no buckets</source>
        <translation>keinen Eimer</translation>
    </message>
    <message>
        <source>one bucket</source>
        <translation>einen Eimer</translation>
    </message>
    <message>
        <source>{n} buckets</source>
        <translation>{n} Eimer</translation>
    </message>
    <message>
        <source>pot</source>
        <translation>Topf</translation>
    </message>
    <message>
        <source>a pot</source>
        <translation>einen Topf</translation>
    </message>
    <message>
        <source>a pot of {litres} L</source>
        <translation>ein Topf von {litres} L</translation>
    </message>
    <message>
        <source>no pots</source>
        <translation>keinen Topf</translation>
    </message>
    <message>
        <source>one pot</source>
        <translation>einen Topf</translation>
    </message>
    <message>
        <source>{n} pots</source>
        <translation>{n} Töpfe</translation>
    </message>
    <message>
        <source>{kind}</source>
        <translation>Gefäß „{kind}“</translation>
    </message>
    <message>
        <source>a {kind}</source>
        <translation>ein Gefäß „{kind}“</translation>
    </message>
    <message>
        <source>a {kind} of {litres} L</source>
        <translation>ein Gefäß „{kind}“ von {litres} L</translation>
    </message>
    <message>
        <source>no {kind}s</source>
        <translation>kein Gefäß „{kind}“</translation>
    </message>
    <message>
        <source>one {kind}</source>
        <translation>ein Gefäß „{kind}“</translation>
    </message>
    <message>
        <source>{n} {kind}s</source>
        <translation>{n} Gefäße „{kind}“</translation>
    </message>
    <message>
        <source>an {kind}</source>
        <translation>ein Gefäß „{kind}“</translation>
    </message>
    <message>
        <source>an {kind} of {litres} L</source>
        <translation>ein Gefäß „{kind}“ von {litres} L</translation>
    </message>
    <message>
        <source>a second {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a third {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a fourth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a fifth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a sixth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a seventh {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>an eighth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a ninth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>a tenth {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Leine</translation>
    </message>
    <message>
        <source>burner</source>
        <translation>Flamme</translation>
    </message>
    <message>
        <source>a burner</source>
        <translation>eine Flamme</translation>
    </message>
    <message>
        <source>hands</source>
        <translation>Hände</translation>
    </message>
    <message>
        <source>one more {kind} of {litres} L</source>
        <translation>noch ein {kind} von {litres} L</translation>
    </message>
    <message>
        <source>there is {things}</source>
        <translation>es gibt {things}</translation>
    </message>
    <message>
        <source>there are {things}</source>
        <translation>es gibt {things}</translation>
    </message>
    <message>
        <source>no more reasons of this kind: {lots}.</source>
        <translation>keine weiteren Gründe dieser Art: {lots}.</translation>
    </message>
    <message>
        <source>one more reason of this kind: {lots}.</source>
        <translation>ein weiterer Grund dieser Art: {lots}.</translation>
    </message>
    <message>
        <source>{n} more reasons of this kind: {lots}.</source>
        <translation>{n} weitere Gründe dieser Art: {lots}.</translation>
    </message>
    <message>
        <source>{need}; {there}, and {have} then in this plan.</source>
        <translation>{need}; {there}, und in diesem Plan {have}.</translation>
    </message>
    <message>
        <source>the line holds {metres} m</source>
        <translation>die Leine fasst {metres} m</translation>
    </message>
    <message>
        <source>{there} large enough</source>
        <translation>{there}, groß genug</translation>
    </message>
    <message>
        <source>To be in time {lot} has to hang on {day}</source>
        <translation>Um rechtzeitig fertig zu sein, muss {lot} am {day} hängen</translation>
    </message>
    <message>
        <source>To be in time {lot} needs {thing} on {day}</source>
        <translation>Um rechtzeitig fertig zu sein, braucht {lot} am {day} {thing}</translation>
    </message>
    <message>
        <source>{lots} hangs on it</source>
        <translation>hängt dann {lots} daran</translation>
    </message>
    <message>
        <source>{lots} hang on it</source>
        <translation>hängen dann {lots} daran</translation>
    </message>
    <message>
        <source>{lots} has it</source>
        <translation>hat dann {lots} Vorrang</translation>
    </message>
    <message>
        <source>{lots} has them</source>
        <translation>hat dann {lots} Vorrang</translation>
    </message>
    <message>
        <source>{lots} have it</source>
        <translation>haben dann {lots} Vorrang</translation>
    </message>
    <message>
        <source>{lots} have them</source>
        <translation>haben dann {lots} Vorrang</translation>
    </message>
    <message>
        <source>{lots} needs it</source>
        <translation>braucht dann {lots} Hände</translation>
    </message>
    <message>
        <source>{lots} needs them</source>
        <translation>braucht dann {lots} Hände</translation>
    </message>
    <message>
        <source>{lots} need it</source>
        <translation>brauchen dann {lots} Hände</translation>
    </message>
    <message>
        <source>{lots} need them</source>
        <translation>brauchen dann {lots} Hände</translation>
    </message>
    <message>
        <source>Even if everything else were free, it fails: {limits}.</source>
        <translation>Auch wenn alles andere frei wäre, geht es nicht: {limits}.</translation>
    </message>
    <message>
        <source>Not all together: {limits}.</source>
        <translation>Nicht alles zusammen: {limits}.</translation>
    </message>
    <message>
        <source>{pieces} can be cured by {date}, not {wanted}; {limits}.</source>
        <translation>{pieces}, nicht {wanted}, gereift bis {date}: mehr ist nicht möglich; {limits}.</translation>
    </message>
    <message>
        <source>{pieces} can be ready by {date}, not {wanted}; {limits}.</source>
        <translation>{pieces}, nicht {wanted}, fertig bis {date}: mehr ist nicht möglich; {limits}.</translation>
    </message>
    <message>
        <source>{pieces} can be cured by {date}, not {wanted}; even if everything else were free, {limits}.</source>
        <translation>{pieces}, nicht {wanted}, gereift bis {date}: mehr ist nicht möglich, auch wenn alles andere frei wäre; {limits}.</translation>
    </message>
    <message>
        <source>{pieces} can be ready by {date}, not {wanted}; even if everything else were free, {limits}.</source>
        <translation>{pieces}, nicht {wanted}, fertig bis {date}: mehr ist nicht möglich, auch wenn alles andere frei wäre; {limits}.</translation>
    </message>
    <message>
        <source>{lots} hangs</source>
        <translation>{lots} hängt</translation>
    </message>
    <message>
        <source>{lots} hangs on {day}</source>
        <translation>{lots} hängt am {day}</translation>
    </message>
    <message>
        <source>{lots} both hang on {day}</source>
        <translation>{lots} hängen beide am {day}</translation>
    </message>
    <message>
        <source>{lots} all hang on {day}</source>
        <translation>{lots} hängen alle am {day}</translation>
    </message>
    <message>
        <source>{lots} needs {thing}</source>
        <translation>{lots} braucht {thing}</translation>
    </message>
    <message>
        <source>{lots} needs {thing} on {day}</source>
        <translation>{lots} braucht am {day} {thing}</translation>
    </message>
    <message>
        <source>{lots} both need {thing} on {day}</source>
        <translation>{lots} brauchen am {day} beide {thing}</translation>
    </message>
    <message>
        <source>{lots} all need {thing} on {day}</source>
        <translation>{lots} brauchen am {day} alle {thing}</translation>
    </message>
    <message>
        <source>{lots} cannot all have it when they need it</source>
        <translation>{lots} können sie nicht alle haben, wenn sie sie brauchen</translation>
    </message>
    <message>
        <source>{lots} cannot all be worked at when they need it</source>
        <translation>an {lots} kann nicht überall gearbeitet werden, wenn es nötig ist</translation>
    </message>
    <message>
        <source>{lots} cannot all have {thing} when they need it</source>
        <translation>{lots} können nicht alle {thing} haben, wenn es nötig ist</translation>
    </message>
    <message>
        <source>the working hours leave no more time</source>
        <translation>die Arbeitszeiten lassen nicht mehr Zeit</translation>
    </message>
    <message>
        <source>nobody is there on {day}</source>
        <translation>niemand ist da am {day}</translation>
    </message>
    <message>
        <source>{begins} to {ends}</source>
        <translation>{begins} bis {ends}</translation>
    </message>
    <message>
        <source>the hours on {day} are {hours}</source>
        <translation>die Stunden am {day} sind {hours}</translation>
    </message>
    <message>
        <source>{step} of {lot} takes {length}</source>
        <translation>{step} von {lot} dauert {length}</translation>
    </message>
    <message>
        <source>{step} of {lot} may last {most} at most</source>
        <translation>{step} von {lot} darf höchstens {most} dauern</translation>
    </message>
    <message>
        <source>from {first} to {second} of {lot} may pass {most} at most</source>
        <translation>von {first} bis {second} von {lot} dürfen höchstens {most} vergehen</translation>
    </message>
    <message>
        <source>{goal} wants {pieces} by {moment}</source>
        <translation>{goal} verlangt {pieces} bis {moment}</translation>
    </message>
    <message>
        <source>{lot} is due by {moment}</source>
        <translation>{lot} ist bis {moment} fällig</translation>
    </message>
    <message>
        <source>{lot} misses its date, {due}, by {late}: it is over on {end}.</source>
        <translation>{lot} verfehlt den Termin {due} um {late}: fertig ist es am {end}.</translation>
    </message>
    <message>
        <source>{goal} on {date} is out of reach by {late}: {pieces} of {lots} would be cured by {last}, {rest} in time.</source>
        <translation>{goal} am {date} ist um {late} außer Reichweite: erst am {last} gereift: {pieces} von {lots}; rechtzeitig: {rest}.</translation>
    </message>
    <message>
        <source>{goal} on {date} is out of reach by {late}: {pieces} of {lots} would be ready by {last}, {rest} in time.</source>
        <translation>{goal} am {date} ist um {late} außer Reichweite: erst am {last} fertig: {pieces} von {lots}; rechtzeitig: {rest}.</translation>
    </message>
    <message>
        <source>{lots} would be late even if everything else were free.</source>
        <translation>Auch wenn alles andere frei wäre, zu spät: {lots}.</translation>
    </message>
    <message>
        <source>{changes}: {achieves}. The price: {price}.</source>
        <translation>{changes}: {achieves}. Der Preis: {price}.</translation>
    </message>
    <message>
        <source>{changes}: {achieves}. The price: {price}; proved, nothing cheaper is enough.</source>
        <translation>{changes}: {achieves}. Der Preis: {price}; bewiesen: nichts Billigeres reicht.</translation>
    </message>
    <message>
        <source>{lot} needs {wanted} for {steps}; the studio has {has}.</source>
        <translation>{lot} braucht {wanted} für {steps}; die Werkstatt hat {has}.</translation>
    </message>
    <message>
        <source>{lot} does not fit on the line: {steps} takes {much} m, and there are {there} m.</source>
        <translation>{lot} passt nicht auf die Leine: nötig sind {much} m für {steps}, und es gibt {there} m.</translation>
    </message>
    <message>
        <source>{lot} does not fit on the line: {steps} takes {much} m, and there is none.</source>
        <translation>{lot} passt nicht auf die Leine: nötig sind {much} m für {steps}, und es gibt keine.</translation>
    </message>
    <message>
        <source>{lot} fits no {kind}: {steps} takes {much} L, and the largest holds {there} L.</source>
        <translation>Für {lot} ist kein {kind} groß genug: nötig sind {much} L für {steps}, und höchstens {there} L gehen hinein.</translation>
    </message>
    <message>
        <source>{lot} fits no {kind}: {steps} takes {much} L, and there is none.</source>
        <translation>Für {lot} ist kein {kind} da: nötig sind {much} L für {steps}.</translation>
    </message>
    <message>
        <source>{steps} of {lot} takes {length} of hands in one go; the longest hours of a day are {hours}.</source>
        <translation>{steps} von {lot} braucht {length} Handarbeit am Stück; die längsten Stunden eines Tags sind {hours}.</translation>
    </message>
    <message>
        <source>{steps} of {lot} take {length} of hands in one go; the longest hours of a day are {hours}.</source>
        <translation>{steps} von {lot} brauchen {length} Handarbeit am Stück; die längsten Stunden eines Tags sind {hours}.</translation>
    </message>
    <message>
        <source>{goal} lacks {n} of its {pieces} pieces in this plan.</source>
        <translation>{goal}: in diesem Plan fehlen {n} von {pieces} Stücken.</translation>
    </message>
    <message>
        <source>{title}, begin</source>
        <translation>{title} (Beginn)</translation>
    </message>
    <message>
        <source>{title}, end</source>
        <translation>{title} (Ende)</translation>
    </message>
    <message>
        <source>{lot}: {step} and what follows it wait for the cure.</source>
        <translation>{lot}: {step} und was darauf folgt, warten auf die Reife.</translation>
    </message>
    <message>
        <source>{lot} has changed since this was planned. Nothing was changed; plan again.</source>
        <translation>{lot} hat sich geändert, seit dies geplant wurde. Nichts wurde geändert; plane neu.</translation>
    </message>
    <message>
        <source>{n} of {all} lots are left out of the plan.</source>
        <translation>{n} von {all} Partien sind aus dem Plan gelassen.</translation>
    </message>
    <message>
        <source>{name} finds no place beside the others in these days, hours and vessels, though it would alone.</source>
        <translation>{name} findet neben den anderen in diesen Tagen, Stunden und Gefäßen keinen Platz, obwohl es allein einen fände.</translation>
    </message>
    <message>
        <source>{code}: {step} has lasted too long; it is planned to end in the next hours.</source>
        <translation>{code}: {step} dauert schon zu lange; das Ende ist für die nächsten Stunden geplant, in denen jemand da ist.</translation>
    </message>
    <message>
        <source>{code}: what follows {step} is overdue; it is planned in the next hours.</source>
        <translation>{code}: Was auf {step} folgt, ist überfällig; es ist für die nächsten Stunden geplant, in denen jemand da ist.</translation>
    </message>
    <message>
        <source>Follows a plan: {title} is to end {moment}.</source>
        <translation>Folgt einem Plan: {title} soll {moment} enden.</translation>
    </message>
    <message>
        <source>Follows a plan: {title} is to begin {moment}.</source>
        <translation>Folgt einem Plan: {title} soll {moment} beginnen.</translation>
    </message>
</context>
</TS>
