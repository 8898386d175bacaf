<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name></name>
    <message>
        <source>Mon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Thu</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fri</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sun</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Monday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tuesday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wednesday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Thursday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Friday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saturday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sunday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>January</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>February</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>March</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>April</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>May</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>June</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>July</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>August</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>September</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>October</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>November</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>December</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{month} {day}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Soak beans tonight for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Is it dry?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last tended</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In since</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} since {at}; aim {span}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> The aim, {at}, falls in quiet hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From now on: {low}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last call: {low}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{limit}, that is {at}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too long: {low}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{limit}; that was {at}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hanging since {at}; the last piece counts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Still not dry?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Damp for {span} and more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} ended {at}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Late: {low}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cured, {ready_title}:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Day {days} from fully dry.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paint within two days:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes paint best until day {paint_best_days} from fully dry.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Painting time is over:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From day {paint_best_days} on paint sinks in less well.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Milk {code} will be too old for {title}, planned next.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without fresh milk the next coat waits a day longer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>soak beans</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US gal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US cup</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US cups</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tbsp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tsp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>less than ¼ tsp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>about {figure} {measure}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>due already</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day}: 1 act, {when}: {words} {code}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day}: {count} acts, and all are due already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>first at {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} is due already</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} are due already</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, the next at {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>midnight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day}: {count} acts, {start}, last before {last}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day}: {count} acts, {start}, last at {last}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>now:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>and {rest} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tonight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Good tonight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Also: {one}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And {rest} more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{words} for {code} {when}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} at {first}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} {first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} {first} to {until} {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>they end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{order} and {ends} {span}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tomorrow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>less than {step} g</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A scale that shows steps of {step} g is too coarse for it: measure {measured} of a {strength} % stock solution ({strength} g made up to 100 mL).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code} makes a QR code too large for this tag. Nothing was printed. Choose a larger tag.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>and {rest} more in the log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yesterday {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>today {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tomorrow {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{figure} US cup</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{figure} US cups</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{figure} US gal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{words} or more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{span} late</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in {span}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>up to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{ends}, aim {span}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look ahead by up to ten years, as in 24h or 90d.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No quiet hours are set.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quiet hours {hours}: nothing rings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is waiting. A new lot begins with “New lot”.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next: {when}, {title}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing until {when}: {title}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>due {moment}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The limit {verb} {limit}. {if_late}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do not disturb lasts from a minute to a day. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reminders may ring.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only what spoils rings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing rings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{but} until {moment}; then all that is due is told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to start tonight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Milk {code} is recorded, good for a further coat until {good}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{value} is no figure for a milk&apos;s {replace}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the milk changed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing of milk {code} is left to take back. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Milk {code} was changed since. Take that back first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its milk was taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Milk {code}: {words} is taken back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what changes: its place, its lots, or that it is used up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Milk {code} is changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tending</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>may end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ready</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>last call</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>past its limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>is it dry?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>use by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mark of the cure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>look ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>evening look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the studio</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{times} times</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waited for quiet hours to end, {from_due}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>told {span} late</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>failed: {channels}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>told; wanted no answer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, after {span}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>open: no answer yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rings again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>waits: {rest} {from_due}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Due {due_words} ({tame}, {tame2}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>did not ring: answered before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>did not ring: {NOT_NEEDED}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>did not ring: it came back when an act was taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>did not ring yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> It was tried, and no channel took it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> and {more} times more, last {from_due}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> It rang {lost} times more at moments not written down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, by {how_words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rang {join}{rest}{by}.{untold}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It rang before its moment as it stands now: it was planned anew, or put right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> ({span} after the first ring)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Answered {at}{since}: {words}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no words</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every channel that was tried, and what it answered:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>… and {rest} more; “Export…” writes them all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A failure that repeats the one before it is written down once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at room heat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>good until</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too old for a further coat since</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code}: {litres}kept {place}, {fresh} {good}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{fault} Until it is right, reminders may come early or late.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say which lots: give their codes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>begun {short_day}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved {moment}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing saved yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>next ring {moment}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing will ring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ringing now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>do not disturb until {moment}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In 10 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Still damp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>… and {rest} more on the bench.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} things need hands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That reminder is not known any more; the bench shows what is open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A reminder is not answered by {answer!r}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no longer needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That was answered already: {what}. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} is put off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing of {code} is left to take back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the lot was taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code} is taken back; its code is not used again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its entry was taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code}: {entry_words} is taken back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Entry {number} ({words}) of {code} stands on it. Take that one back first. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code} has been worked on since the split: {count} entries stand on it. Take those back first. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the split was taken back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Entry {number} belongs to the lot&apos;s past and cannot be changed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no entry {number} that stands. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A split that was taken back is made again, not restored.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code} is restored.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing of {code} was taken back. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code}: {entry_words} stands again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its entry was restored</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>When a lot was made is not corrected. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what is to be corrected: --at, --note or --reading.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an entry was corrected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code}: entry {number} is corrected.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>felt dry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Across the room — Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log met a fault of its own, and this was not written down. The log’s own window says more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not written down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Is this right?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put it off all the same?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> — U takes it back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space again says yes · Esc says no</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space goes back to what is waiting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc leaves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Later: 1 in 10 min, 2 in 30 min, M next morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Later: 1, 2, M</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>U takes {take_back} back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>W lets the screen rest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>W keeps the screen on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>U takes back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is waiting.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One moment …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A new lot is begun in the log’s own window.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Running</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>quiet hours until {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{second}: {lot} at {at}; it asks again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put off: {act}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begun</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{done} {lot} at {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing until {when}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>do not disturb until {at}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>screen kept awake</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chime off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chime silent: its volume is 0</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chime on, {chime_volume} %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And {hidden} more · {keys}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The screen cannot be kept on from here. Its rest is set in the system’s settings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Reminders</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New lot…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Print tags…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Settings…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;plit…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Go on to a method…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Name, place, weight, cure…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Record the &amp;milk…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;top this lot…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Find a lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the &amp;lots</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the s&amp;teps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to the &amp;bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Methods…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Across the room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>L&amp;arger text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;maller text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Answer what rings (Space)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Put everything off 10 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Take back the last act</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;What rang…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ring a t&amp;est</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help pages</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;What is new</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;About Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing needs hands just now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to take back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Later today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tonight and tomorrow morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Further on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At the bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{due} · {today} later today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take back: {words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{lot}: {answer}, at what time?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{lot}: skip “{title}”</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why is it skipped?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>10 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>30 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>If put off: {warning}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put off: {named}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More answers: {named}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done at a stated &amp;time…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Skip with a reason…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open the lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put off 10 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ring a test</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide this until it changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{others} more on the bench.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put off 10 minutes: {named}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rings: {named}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Closing the window keeps the reminders going; the icon in the tray opens it again. Ctrl+Q quits, and then nothing rings until Studio Log is started again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This desktop has no tray, so closing makes the window small instead, and the reminders keep going. Ctrl+Q quits, and then nothing rings until Studio Log is started again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something in the program itself went wrong. What was confirmed before is kept; the last act may not have been. Try it again. The details can be copied for whoever mends it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Yes, take it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;No</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Copy the details</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Put away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put this message away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Getting started</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How times may be typed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The timeline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reminders</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reminders without the window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Across the room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Methods</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Safety</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sources of the figures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is new</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This page is missing from the installation. Install the program anew.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Help — Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find on this page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Help pages</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Help page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not on this page.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do not &amp;disturb for an hour</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do not disturb until &amp;morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Let it ring again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studio Log — a dyer’s logbook</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A logbook with reminders for a natural dyer’s workshop. Every lot’s record, its amounts, what it needs next and by when. It never replaces the supplier’s safety data sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chime in this window is all that can be tried here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test rung. {said}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No channel answered; ringing here only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Times go by the {zone}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lots</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to: {words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;7 days</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;30 days</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;90 days</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking what rang…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing rang in these days.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing found for “{find}” in these days. Try fewer words or more days.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What rang cannot be shown just now. Close this window and open it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What rang — Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Export…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export these rows as CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Close</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show: {span}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what-rang-{seen_from:%Y-%m-%d}.csv</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export what rang</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comma-separated values (*.csv)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{counted} Written to {chosen}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 reminder.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count:,} reminders, the latest due first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 waits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{left:,} wait</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} {waits} for an answer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rang</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Answer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a reminder to read when and how it rang.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find a lot, an act, an answer, a channel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find in what rang</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What rang</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chosen reminder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>metric</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say how much the bucket holds, such as 10 L.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Keep these</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Leave it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studio</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Name of the studio</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Un&amp;its</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Bucket for a new lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time &amp;zone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start at lo&amp;gin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as the system has it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>high contrast</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The window speaks it from its next start on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The &amp;window is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Size of te&amp;xt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing rings in them; it waits until they end. Equal times mean no quiet hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A night is named by its evening: Saturday 00:30 to 09:00 is the night after Saturday, and begins on Sunday at 00:30.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is held back: there are no quiet hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>quiet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} night is quiet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} night from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} night until</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} night begins and ends at {start:%H:%M}. Untick “quiet”.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quiet hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every night quiet from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every night quiet until</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Some nights differ</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was understood of the quiet hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;until</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every night &amp;from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is quiet now, until {end}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tonight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day} night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next quiet: {day} {start:%H:%M} to {end}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A &amp;reminder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try the chime of a reminder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A countdown’s en&amp;d</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try the chime of a countdown’s end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sp&amp;oiling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try the chime of what is spoiling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say in the morning w&amp;hat the day holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time of the morning’s look ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say in the &amp;evening what to start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a&amp;t</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time of the evening’s look ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What spoils &amp;may ring in quiet hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound a &amp;chime when a reminder rings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>silent 0 %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Volume of the chime in percent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Volume</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0 %, silent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tags cannot be drawn: the program was started without its drawing part. No file was written; call the command by itself.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no lot to make a tag for. Nothing was printed; choose a lot.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} tags at once are too many. Nothing was printed; make up to {MOST_TAGS} at a time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No font was found on this computer, so a tag would have no words. Nothing was printed. Install a font such as DejaVu Sans and try again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tags </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The PDF could not be drawn. No file was written; try again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The printer did not take the tags. Nothing was printed. See that it is on, or save the tags as a PDF.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This printer has no page of {wide:g} × {high:g} mm; it offered {width:.0f} × {height:.0f} mm. Nothing was printed. Choose a sheet that it takes, or save the tags as a PDF.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tags</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What became of the tags</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Single tag, own size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Width</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How &amp;many of each</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start at p&amp;lace</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sho&amp;w page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save as P&amp;DF…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sent to {printer}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the printer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tag-{code}.pdf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the tags as a PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No printer is set up on this computer. Nothing was printed. Save the tags as a PDF and print that elsewhere, at 100 % and not fitted to the page.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The printing part of the program cannot be loaded here. Nothing was printed. Save the tags as a PDF instead.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{what} shortened</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{rows_left_out} of {count} rows left out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a row shortened</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>So with {rest} more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preview of the tags</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New lot…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print tags…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as of </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next: nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next: {named} · {due_words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next: {named}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studio Log
{next_words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the tray</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>handed to the tray; nothing tells if it is seen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>My studio</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>metric: grams, litres, metres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US: ounces, cups, yards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quiet hours begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quiet hours end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Welcome to Studio Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A dyer’s logbook that rings at the right moment. Three things, and it begins; each can be changed later under File, Settings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Units (any may be typed)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quiet hours, in which nothing rings: from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>un&amp;til</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Welcome</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>13:08, -3h, at eight last night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{understood}: still ahead. Enter it once it has happened.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Understood: {understood}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>When it suits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Soon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spoiling</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
