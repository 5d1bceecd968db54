<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>CaseloadPage</name>
    <message numerus="yes">
        <source>%n courses</source>
        <translation>
            <numerusform>%n course</numerusform>
            <numerusform>%n courses</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CaseloadWords</name>
    <message numerus="yes">
        <source>%n years</source>
        <translation>
            <numerusform>%n year</numerusform>
            <numerusform>%n years</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ElectrodeWords</name>
    <message numerus="yes">
        <source>%n pad(s)</source>
        <translation>
            <numerusform>%n pad</numerusform>
            <numerusform>%n pads</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n use(s)</source>
        <translation>
            <numerusform>%n use</numerusform>
            <numerusform>%n uses</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n month(s)</source>
        <translation>
            <numerusform>%n month</numerusform>
            <numerusform>%n months</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message numerus="yes">
        <source>The safety check of this unit is %n day(s) overdue.</source>
        <translation>
            <numerusform>The safety check of this unit is %n day overdue.</numerusform>
            <numerusform>The safety check of this unit is %n days overdue.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>GridWords</name>
    <message numerus="yes">
        <source>%n sessions to come</source>
        <translation>
            <numerusform>%n session to come</numerusform>
            <numerusform>%n sessions to come</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sessions, no diary yet</source>
        <translation>
            <numerusform>%n session, no diary yet</numerusform>
            <numerusform>%n sessions, no diary yet</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n sessions done</source>
        <translation>
            <numerusform>%1 of %n session done</numerusform>
            <numerusform>%1 of %n sessions done</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sessions missed</source>
        <translation>
            <numerusform>%n session missed</numerusform>
            <numerusform>%n sessions missed</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ImportReportWords</name>
    <message numerus="yes">
        <source>%n row(s) are taken over.</source>
        <translation>
            <numerusform>%n row is taken over.</numerusform>
            <numerusform>%n rows are taken over.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) would be taken over; nothing was saved.</source>
        <translation>
            <numerusform>%n row would be taken over; nothing was saved.</numerusform>
            <numerusform>%n rows would be taken over; nothing was saved.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ImportVerbWords</name>
    <message numerus="yes">
        <source>%n row(s) differ from what is on file. Nothing was taken over. Look at them with --dry-run, then choose --take ours or --take file.</source>
        <translation>
            <numerusform>%n row differs from what is on file. Nothing was taken over. Look at it with --dry-run, then choose --take ours or --take file.</numerusform>
            <numerusform>%n rows differ from what is on file. Nothing was taken over. Look at them with --dry-run, then choose --take ours or --take file.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ImportWords</name>
    <message numerus="yes">
        <source>%1: %n row(s)</source>
        <translation>
            <numerusform>%1: %n row</numerusform>
            <numerusform>%1: %n rows</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>&amp;Take over %n row(s)</source>
        <translation>
            <numerusform>&amp;Take over %n row</numerusform>
            <numerusform>&amp;Take over %n rows</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) are taken over.</source>
        <translation>
            <numerusform>%n row is taken over.</numerusform>
            <numerusform>%n rows are taken over.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n row(s) lie outside this course; they are left out.</source>
        <translation>
            <numerusform>%1 of %n row lies outside this course; it is left out.</numerusform>
            <numerusform>%1 of %n rows lie outside this course; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) are on file already; they are left out.</source>
        <translation>
            <numerusform>%n row is on file already; it is left out.</numerusform>
            <numerusform>%n rows are on file already; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) lie after today; they are left out.</source>
        <translation>
            <numerusform>%n row lies after today; it is left out.</numerusform>
            <numerusform>%n rows lie after today; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) say again what another row says; they are left out.</source>
        <translation>
            <numerusform>%n row says again what another row says; it is left out.</numerusform>
            <numerusform>%n rows say again what another row says; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) name a day and nothing else; they are left out.</source>
        <translation>
            <numerusform>%n row names a day and nothing else; it is left out.</numerusform>
            <numerusform>%n rows name a day and nothing else; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) can’t be read; they are left out.</source>
        <translation>
            <numerusform>%n row can’t be read; it is left out.</numerusform>
            <numerusform>%n rows can’t be read; they are left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) differ from what is on file.</source>
        <translation>
            <numerusform>%n row differs from what is on file.</numerusform>
            <numerusform>%n rows differ from what is on file.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) are new.</source>
        <translation>
            <numerusform>%n row is new.</numerusform>
            <numerusform>%n rows are new.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n contraction(s)</source>
        <translation>
            <numerusform>%n contraction</numerusform>
            <numerusform>%n contractions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>InventoryWords</name>
    <message numerus="yes">
        <source>%n day(s) overdue, %1</source>
        <translation>
            <numerusform>%n day overdue, %1</numerusform>
            <numerusform>%n days overdue, %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ListWords</name>
    <message numerus="yes">
        <source>%n channel(s), %1</source>
        <translation>
            <numerusform>%n channel, %1</numerusform>
            <numerusform>%n channels, %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TradeWords</name>
    <message numerus="yes">
        <source>%n day(s) a week, any</source>
        <translation>
            <numerusform>%n day a week, any</numerusform>
            <numerusform>%n days a week, any</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n times a day</source>
        <translation>
            <numerusform>%n time a day</numerusform>
            <numerusform>%n times a day</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n day</numerusform>
            <numerusform>%n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n year(s)</source>
        <translation>
            <numerusform>%n year</numerusform>
            <numerusform>%n years</numerusform>
        </translation>
    </message>
</context>
</TS>
