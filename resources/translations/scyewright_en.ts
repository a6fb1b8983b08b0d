<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>scye::ConflictBox</name>
    <message numerus="yes">
        <source>Rip back to %n rows</source>
        <translation>
            <numerusform>Rip back to %n row</numerusform>
            <numerusform>Rip back to %n rows</numerusform>
        </translation>
    </message>
</context>
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
    <name>scye::NeedlePage</name>
    <message numerus="yes">
        <source>%n stitches</source>
        <translation>
            <numerusform>%n stitch</numerusform>
            <numerusform>%n stitches</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%L1 to %n stitches</source>
        <translation>
            <numerusform>%L1 to %n stitch</numerusform>
            <numerusform>%L1 to %n stitches</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n rows left</source>
        <translation>
            <numerusform>%n row left</numerusform>
            <numerusform>%n rows left</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>scye::SizesPage</name>
    <message numerus="yes">
        <source>underarm, %n sts</source>
        <translation>
            <numerusform>underarm, %n st</numerusform>
            <numerusform>underarm, %n sts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>crown, %n sts</source>
        <translation>
            <numerusform>crown, %n st</numerusform>
            <numerusform>crown, %n sts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>scye::VerdictLine</name>
    <message numerus="yes">
        <source>%n findings</source>
        <translation>
            <numerusform>%n finding</numerusform>
            <numerusform>%n findings</numerusform>
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
