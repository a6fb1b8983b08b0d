<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>scye::FileNotices</name>
    <message numerus="yes">
        <source> So were %n more.</source>
        <translation>
            <numerusform> So was %n more.</numerusform>
            <numerusform> So were %n more.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>scye::WearerRow</name>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 and %n more</numerusform>
            <numerusform>%1 and %n more</numerusform>
        </translation>
    </message>
</context>
</TS>
