#!/usr/bin/env python3
"""Writes the cases of the corpus that are about formats: python3 formats.py (standard library only).

Each case is a folder with the exports of one program, one oddity in it, and expected.json, which is written by hand here and
never by the code under test. Cases may also be added as folders without this script. The people, sites and lots are fictional.
"""
import gzip, io, json, os, shutil, zipfile

HERE = os.path.dirname(os.path.abspath(__file__))
HEAD = "person,site,collected_at,result\n"
ROWS = ("p1,North,2026-01-05T08:00,negative\n"
        "p2,North,2026-01-05T08:05,positive\n"
        "p3,South,2026-01-05T08:10,negative\n")
PLAIN = HEAD + ROWS
THREE = {"ledger": {"screening": "counted 3"}, "findings": [], "setAside": [], "outcomes": "negative 2, positive 1"}


def expect(base=THREE, **changes):
    expected = {**base, **changes}
    if base.get("outcomes") == "positive 6":  # six positives of one site and nothing else are no program
        expected["findings"] = [*expected["findings"], "warning no-negatives screening.csv:2 result x1"]
    return expected


# ---- workbooks, written as the bare parts that the standard asks for (ECMA-376)
MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
REL = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACK = "http://schemas.openxmlformats.org/package/2006/relationships"
DATE, MOMENT, ZEROS = 1, 2, 3  # styles: a date, a date with time, figures with leading zeros
STYLES = (f'<styleSheet xmlns="{MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="dd\\.mm\\.yyyy hh:mm"/>'
          '<numFmt numFmtId="165" formatCode="000"/></numFmts><cellXfs count="4"><xf numFmtId="0"/>'
          '<xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="164" applyNumberFormat="1"/><xf numFmtId="165" applyNumberFormat="1"/></cellXfs></styleSheet>')


def column(index):
    return chr(ord("A") + index)


def escaped(text):
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\n", "&#10;")


def cell(place, value):
    if value is None:
        return ""
    if isinstance(value, tuple):
        kind, content = value
        if kind == "error":
            return f'<c r="{place}" t="e"><v>{content}</v></c>'
        if kind == "uncached":
            return f'<c r="{place}"><f>{content}</f></c>'
        if kind == "formula":
            return f'<c r="{place}" t="str"><f>A1</f><v>{escaped(content)}</v></c>'
        return f'<c r="{place}" s="{kind}"><v>{content}</v></c>'
    if isinstance(value, bool):
        return f'<c r="{place}" t="b"><v>{int(value)}</v></c>'
    if isinstance(value, (int, float)):
        return f'<c r="{place}"><v>{value}</v></c>'
    return f'<c r="{place}" t="inlineStr"><is><t xml:space="preserve">{escaped(value)}</t></is></c>'


def workbook(sheets, date1904=False):
    """sheets: (name, {row number: values}, merged ranges, state)"""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        def part(name, text):
            archive.writestr(zipfile.ZipInfo(name, (2026, 1, 1, 0, 0, 0)), '<?xml version="1.0" encoding="UTF-8"?>' + text, zipfile.ZIP_DEFLATED)
        part("[Content_Types].xml", '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" '
             'ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>')
        part("_rels/.rels", f'<Relationships xmlns="{PACK}"><Relationship Id="r1" Type="{REL}/officeDocument" Target="xl/workbook.xml"/></Relationships>')
        listed, related = "", ""
        for number, (name, rows, merged, state) in enumerate(sheets, 1):
            listed += f'<sheet name="{escaped(name)}" sheetId="{number}" state="{state}" r:id="r{number}"/>'
            related += f'<Relationship Id="r{number}" Type="{REL}/worksheet" Target="worksheets/sheet{number}.xml"/>'
            body = "".join(f'<row r="{row}">' + "".join(cell(f"{column(at)}{row}", value) for at, value in enumerate(values)) + "</row>"
                           for row, values in sorted(rows.items()))
            ranges = f'<mergeCells count="{len(merged)}">' + "".join(f'<mergeCell ref="{one}"/>' for one in merged) + "</mergeCells>" if merged else ""
            part(f"xl/worksheets/sheet{number}.xml", f'<worksheet xmlns="{MAIN}"><sheetData>{body}</sheetData>{ranges}</worksheet>')
        part("xl/workbook.xml", f'<workbook xmlns="{MAIN}" xmlns:r="{REL}"><workbookPr date1904="{int(date1904)}"/><sheets>{listed}</sheets></workbook>')
        part("xl/_rels/workbook.xml.rels", f'<Relationships xmlns="{PACK}">{related}<Relationship Id="rs" Type="{REL}/styles" Target="styles.xml"/></Relationships>')
        part("xl/styles.xml", STYLES)
    return out.getvalue()


def sheet(rows, name="Log", merged=(), state="visible"):
    return (name, rows if isinstance(rows, dict) else dict(enumerate(rows, 1)), list(merged), state)


HEADINGS = ["person", "site", "collected_at", "result"]
TEXT_ROWS = [["p1", "North", "2026-01-05T08:00", "negative"], ["p2", "North", "2026-01-05T08:05", "positive"], ["p3", "South", "2026-01-05T08:10", "negative"]]
LOG = sheet([HEADINGS] + TEXT_ROWS)


# ---- FHIR R4 Observations
def observation(person="p2", value="260373001", status="final", interpretation=None, when="2026-01-05T20:00:00Z", **more):
    one = {"resourceType": "Observation", "status": status, "code": {"coding": [{"system": "http://loinc.org", "code": "94500-6"}]},
           "subject": {"reference": f"Patient/{person}"}, "effectiveDateTime": when}
    if value:
        one["valueCodeableConcept"] = {"coding": [{"system": "http://snomed.info/sct", "code": value}]}
    if interpretation:
        one["interpretation"] = [{"coding": [{"system": "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation", "code": interpretation}]}]
    one.update(more)
    return json.dumps(one)


def lines(*resources):
    return "".join(one + "\n" for one in resources)


POSITIVES = HEAD + "".join(f"p{n},North,2026-01-05T08:{n:02}Z,positive\n" for n in range(1, 7))
SIX = {"findings": [], "setAside": [], "outcomes": "positive 6"}

def levels(column, values):
    """Three good rows with these values in a column."""
    rows = [{"person": f"p{i + 1}", "site": "North", "collected_at": f"2026-01-05T08:{5 * i:02}", "result": ["negative", "positive", "negative"][i], column: values[i]} for i in range(3)]
    return ",".join(rows[0]) + "\n" + "".join(",".join(row.values()) + "\n" for row in rows)


def with_part(content, name):
    """A workbook with one more part."""
    made = io.BytesIO(content)
    with zipfile.ZipFile(made, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(zipfile.ZipInfo(name, (2026, 1, 5, 0, 0, 0)), "<outside/>")
    return made.getvalue()


def amplified():
    """One text of 100,000 letters in the shared texts, and 20,000 cells that refer to it."""
    rows = "".join(f'<row r="{r}"><c r="A{r}" t="s"><v>0</v></c></row>' for r in range(2, 20_002))
    head = '<row r="1">' + "".join(cell(column(c) + "1", text) for c, text in enumerate(HEAD.strip().split(","))) + "</row>"
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook([LOG]))) as plain, zipfile.ZipFile(out, "w") as archive:
        for part in plain.namelist():
            text = plain.read(part).decode()
            if part.endswith("sheet1.xml"):
                text = f'<worksheet xmlns="{MAIN}"><sheetData>{head}{rows}</sheetData></worksheet>'
            if part.endswith("workbook.xml.rels"):
                text = text.replace("</Relationships>", f'<Relationship Id="rt" Type="{REL}/sharedStrings" Target="sharedStrings.xml"/></Relationships>')
            archive.writestr(zipfile.ZipInfo(part, (2026, 1, 5, 0, 0, 0)), text, zipfile.ZIP_DEFLATED)
        archive.writestr(zipfile.ZipInfo("xl/sharedStrings.xml", (2026, 1, 5, 0, 0, 0)), f'<sst xmlns="{MAIN}"><si><t>{"x" * 100_000}</t></si></sst>', zipfile.ZIP_DEFLATED)
    return out.getvalue()


CASES = {
    # -- text
    "utf-16-with-mark": ("UTF-16 little endian, tabs", {"screening.tsv": b"\xff\xfe" + PLAIN.replace(",", "\t").replace("North", "Nörd").encode("utf-16-le")},
        expect(files=["screening.tsv: delimited text, UTF-16 little endian, tab, headings 1"], sites="Nörd 2, South 1")),
    "windows-1252": ("letters that are not UTF-8", {"screening.csv": PLAIN.replace("North", "Nörd").encode("cp1252")},
        expect(findings=["note read-as-windows-1252 screening.csv x1"], sites="Nörd 2, South 1")),
    "semicolons-and-decimal-commas": ("a column that is not read holds decimal commas", {"screening.csv":
        "person;site;collected_at;result;temperature\np1;North;2026-01-05T08:00;negative;36,6\np2;North;2026-01-05T08:05;positive;37,9\np3;South;2026-01-05T08:10;negative;36,2\n"},
        expect(files=["screening.csv: delimited text, UTF-8, semicolon, headings 1"])),
    "vertical-bars-in-txt": ("vertical bars, named .txt", {"screening 2026.txt": PLAIN.replace(",", "|")},
        expect(files=["screening 2026.txt: delimited text, UTF-8, vertical bar, headings 1"])),
    "stated-delimiter": ("a first line that states the delimiter", {"screening.csv": "sep=;\n" + PLAIN.replace(",", ";")},
        expect(files=["screening.csv: delimited text, UTF-8, semicolon, headings 2"])),
    "lines-before-headings": ("a title, an empty line and a remark with commas before the headings", {"screening.csv":
        "Screening log of Quillmoor\n\nExported by the kiosk, version 3, all sites\n" + PLAIN + "p4,South,soon,negative\n"},
        expect(files=["screening.csv: delimited text, UTF-8, comma, headings 4, before 2"], ledger={"screening": "set-aside 1, counted 3"},
               findings=["note lines-before-headings screening.csv:4 x1", "warning unreadable-date screening.csv:8 collected_at x1"], setAside=["screening.csv:8 unreadable-date"])),
    "cells-before-headings": ("lines before the headings that are as wide as these", {"screening.csv": "Site log;;;\nfrom;2026-01-01;to;2026-01-31\n" + PLAIN.replace(",", ";")},
        expect(files=["screening.csv: delimited text, UTF-8, semicolon, headings 3, before 2"], findings=["note lines-before-headings screening.csv:3 x1"])),
    "no-headings-at-all": ("rows without headings: nothing is guessed", {"screening.csv": ROWS}, {"refused": [
        "error missing-column screening.csv:1 person", "error missing-column screening.csv:1 site", "error missing-column screening.csv:1 collected_at", "error missing-column screening.csv:1 result"]}),
    "totals-line": ("a line of totals at the end, in English", {"screening.csv": PLAIN + "Total,,,3\n"},
        expect(ledger={"screening": "set-aside 1, counted 3"}, findings=["note totals-line screening.csv:5 x1"], setAside=["screening.csv:5 totals-line"])),
    "totals-lines-german": ("sums by site and in all, in German, and a line of remarks", {"screening.csv": PLAIN + "Zwischensumme Süd:,,,1\nGesamtsumme (alle Standorte),,,3\nErstellt am 5.1.,,,\n".replace("Zwischensumme Süd", "Zwischensumme")},
        expect(ledger={"screening": "set-aside 3, counted 3"}, findings=["note totals-line screening.csv:5 x2", "warning missing-value screening.csv:7 site x1"],
               setAside=["screening.csv:5 totals-line", "screening.csv:6 totals-line", "screening.csv:7 missing-value"])),
    "totals-line-french-and-spanish": ("Total général, Suma total", {"screening.csv": PLAIN + "Total général : 3,,,\n,Suma total,3,\n"},
        expect(ledger={"screening": "set-aside 2, counted 3"}, findings=["note totals-line screening.csv:5 x2"], setAside=["screening.csv:5 totals-line", "screening.csv:6 totals-line"])),
    "a-site-called-total": ("a full row is never a line of totals", {"screening.csv": PLAIN.replace("p3,South", "p3,Total").replace(HEAD, HEAD) .replace("person,site", "person,site")},
        expect(sites="North 2, Total 1")),
    "headings-spelt-freely": ("case, spaces, accents and hyphens in headings", {"screening.csv": " PERSON ;Sité; Collected-At ;RESULT\n" + ROWS.replace(",", ";")}, expect()),
    "headings-in-german": ("usual headings of a German log", {"screening.csv": "Personalnummer;Standort;Entnahmezeitpunkt [Ortszeit];Testergebnis;Chargen-Nr.\n" + ROWS.replace(",", ";").replace("negative", "negative;A-1").replace("positive", "positive;A-1")}, expect()),
    "headings-in-french-and-spanish": ("a French log and a Spanish laboratory", {"screening.csv": "matricule;lieu;date de prélèvement;résultat\n" + ROWS.replace(",", ";"), "confirmatory.csv": "empleado;fecha de la toma;resultado;método\np2;2026-01-05T12:00;positive;RT-PCR\n"},
        expect(ledger={"screening": "counted 3", "confirmatory": "counted 1"}, followUp="confirmed 1")),
    "headings-of-a-german-plant": ("a plant's log, its laboratory and its headcount, with their own usual headings", {
        "screening.csv": "Testdatum / Uhrzeit;Ablesezeit;Ausweis-Nr.;Werk;Charge;Verfallsdatum;Ergebnis;Symptome (ja/nein);Bediener\n05.01.2026 08:00;05.01.2026 08:15;001;Ahornfurt;A-1;31.12.2026;negativ;nein;B1\n13.01.2026 08:05;13.01.2026 08:20;002;Ahornfurt;A-1;31.12.2026;positiv;nein;B1\n13.01.2026 08:10;13.01.2026 08:25;003;Ahornfurt;A-1;31.12.2026;negativ;nein;B2\n",
        "confirmatory.csv": "Ausweis-Nr.;Entnahmedatum;Befunddatum;Befund;Ct-Wert;Anlass\n002;13.01.2026 12:00;14.01.2026 12:00;nachgewiesen;24,1;Nachtestung\n",
        "headcount.csv": "Werk;Kalenderwoche;Anzahl Beschäftigte\nAhornfurt;2026-W02;54\nAhornfurt;2026-W03;54\n"},
        expect(ledger={"screening": "counted 3", "confirmatory": "counted 1", "headcount": "counted 2"}, followUp="confirmed 1", sites="Ahornfurt 3")),
    "headings-of-a-french-plant": ("a plant's log, its laboratory and its headcount, with their own usual headings", {
        "screening.csv": "Date et heure du prélèvement;Heure de lecture;N° de badge;Usine;N° de lot;Date de péremption;Résultat;Symptômes;Opérateur\n05/01/2026 08:00;05/01/2026 08:15;001;Valclair;A-1;31/12/2026;Négatif;non;B1\n13/01/2026 08:05;13/01/2026 08:20;002;Valclair;A-1;31/12/2026;Positif;non;B1\n13/01/2026 08:10;13/01/2026 08:25;003;Valclair;A-1;31/12/2026;Négatif;non;B2\n",
        "confirmatory.csv": "N° de badge;Date de prélèvement;Date de rendu;Résultat;Valeur Ct;Motif\n002;13/01/2026 12:00;14/01/2026 12:00;détecté;30,8;confirmation\n",
        "headcount.csv": "Usine;Semaine;Effectif\nValclair;2026-W02;54\nValclair;2026-W03;54\n"},
        expect(ledger={"screening": "counted 3", "confirmatory": "counted 1", "headcount": "counted 2"}, followUp="confirmed 1", sites="Valclair 3")),
    "dates-of-two-figures-where-not-required": ("a time of reading with a year of two figures: what to do about dates, not about words", {"screening.csv": "person,site,collected_at,result,read_at\np1,North,2026-01-05T08:00,negative,05.01.26 08:15\np2,North,2026-01-05T08:05,positive,\n"},
        expect(ledger={"screening": "counted 2"}, outcomes="negative 1, positive 1", findings=["warning unreadable-value screening.csv:2 read_at x1"])),
    "workbook-without-a-column-and-with-notes": ("no sheet fits, but only one tries to: the message says what it lacks", {"screening.xlsx": workbook([sheet([["Log"], ["person", "site", "collected_at", "colour"], ["p1", "North", "2026-01-05", "red"]]), sheet([["Written by the plant"], ["C = control line"]], "Notes")])},
        {"refused": ["error missing-column screening.xlsx:2 result", "note lines-before-headings screening.xlsx:2"]}),
    "headings-with-units": ("units and remarks in brackets", {"screening.csv": "Badge (pseudonym),Site,Collected at [local time],Result {word}\n" + ROWS}, expect()),
    "two-headings-with-units": ("two headings that differ only in brackets", {"screening.csv": "person,site,collected_at (kiosk),collected_at (desk),result\np1,North,2026-01-05,2026-01-05,negative\n"},
        {"refused": ["error ambiguous-headings screening.csv:1 collected_at"]}),
    "carriage-returns-only": ("lines that end with CR alone", {"screening.csv": (PLAIN + "p4,South,soon,negative\n").replace("\n", "\r")},
        expect(ledger={"screening": "set-aside 1, counted 3"}, findings=["warning unreadable-date screening.csv:5 collected_at x1"], setAside=["screening.csv:5 unreadable-date"])),
    "mixed-line-ends": ("LF, CR LF and CR in one file", {"screening.csv": HEAD.replace("\n", "\r\n") + "p1,North,2026-01-05T08:00,negative\rp2,North,2026-01-05T08:05,positive\r\np3,South,2026-01-05T08:10,negative"}, expect()),
    "quoted-line-breaks-behind-mark": ("UTF-8 with mark; a cell with a line break moves the lines behind it", {"screening.csv": b"\xef\xbb\xbf" + (PLAIN.replace("South", '"South\ngate"') + "p4,South,soon,negative\n").encode()},
        expect(files=["screening.csv: delimited text, UTF-8 with byte order mark, comma, headings 1"], ledger={"screening": "set-aside 1, counted 3"}, sites="North 2, South\ngate 1",
               findings=["warning unreadable-date screening.csv:6 collected_at x1"], setAside=["screening.csv:6 unreadable-date"])),
    "years-of-two-figures": ("refused, with what to do", {"screening.csv": HEAD + "p1,North,13.1.26,negative\np2,North,2026-01-13,positive\n"},
        expect(ledger={"screening": "set-aside 1, counted 1"}, findings=["warning two-digit-year screening.csv:2 collected_at x1"], setAside=["screening.csv:2 two-digit-year"], outcomes="positive 1")),
    "years-of-two-figures-stated": ("the program file says that they are read", {"screening.csv": HEAD + "p1,North,13.1.26 08:00,negative\np2,North,2.1.26 08:00,positive\n",
        "program.json": json.dumps({"exports": {"screening": {"twoDigitYears": True}}})},
        expect(ledger={"screening": "counted 2"}, outcomes="negative 1, positive 1", days="2026-01-02 1, 2026-01-13 1")),
    # -- files
    "gzip": ("a compressed file; its lines are those of the text", {"screening.csv.gz": gzip.compress((PLAIN + "p4,South,soon,negative\n").encode(), mtime=0)},
        expect(files=["screening.csv.gz: delimited text in gzip, UTF-8, comma, headings 1"], ledger={"screening": "set-aside 1, counted 3"},
               findings=["warning unreadable-date screening.csv.gz:5 collected_at x1"], setAside=["screening.csv.gz:5 unreadable-date"])),
    "gzip-of-two-members": ("two compressed pieces in one file", {"screening.csv.gz": gzip.compress(HEAD.encode(), mtime=0) + gzip.compress(ROWS.encode(), mtime=0)}, expect()),
    "gzip-cut-off": ("a compressed file whose end is missing: it would read as fewer rows", {"screening.csv.gz": gzip.compress((PLAIN * 50).encode(), mtime=0)[:-9]}, {"refused": ["error damaged-archive screening.csv.gz"]}),
    "gzip-by-name-only": ("a file that is not compressed, whatever its name", {"screening.csv.gz": PLAIN}, {"refused": ["error damaged-archive screening.csv.gz"]}),
    "files-of-other-endings": ("called like an export, but not one that is read: said, not passed over", {"screening.csv": PLAIN, "confirmatory.xls": b"\xd0\xcf\x11\xe0", "screening.log": "kept by the kiosk\n"},
        expect(findings=["warning file-not-read screening.log x1", "warning file-not-read confirmatory.xls x1"])),
    "two-formats-of-one-export": ("the same export as text and compressed", {"screening.csv": PLAIN, "screening.csv.gz": gzip.compress(PLAIN.encode(), mtime=0)}, {"refused": ["error two-formats screening.csv"]}),
    "folder-of-files": ("the program file names a folder", {"logs/a.tsv": PLAIN.replace(",", "\t"), "logs/b.txt": HEAD + "p4,South,2026-01-06T08:00,negative\n", "logs/notes.md": "not an export\n",
        "program.json": json.dumps({"exports": {"screening": {"files": ["logs/"]}}})},
        expect(ledger={"screening": "counted 4"}, outcomes="negative 3, positive 1", files=["a.tsv: delimited text, UTF-8, tab, headings 1", "b.txt: delimited text, UTF-8, comma, headings 1"])),
    "file-outside-of-the-folder": ("a name that climbs out of the folder", {"screening.csv": PLAIN, "program.json": json.dumps({"exports": {"screening": {"files": ["../gzip/*.gz", "/etc/hostname"]}}})},
        {"refused": ["error file-outside-folder", "error file-outside-folder"]}),
    "workbook-named-csv": ("a workbook whose name says that it is text", {"screening.csv": workbook([LOG])}, {"refused": ["error not-text screening.csv"]}),
    "text-named-xlsx": ("text whose name says that it is a workbook", {"screening.xlsx": PLAIN}, {"refused": ["error unreadable-workbook screening.xlsx"]}),
    # -- workbooks
    "workbook-dates-as-serials": ("dates with and without time, days counted from 1900", {"screening.xlsx": workbook([sheet([HEADINGS,
        ["p1", "North", (MOMENT, 46027.3333333333), "negative"], ["p2", "North", (DATE, 46028), "positive"], ["p3", "South", (MOMENT, 46029), "negative"]])])},
        expect(files=["screening.xlsx: workbook, sheet Log, headings 1"], days="2026-01-05 1, 2026-01-06 1, 2026-01-07 1")),
    "workbook-dates-from-1904": ("the other way of counting days", {"screening.xlsx": workbook([sheet([HEADINGS,
        ["p1", "North", (MOMENT, 44565.3333333333), "negative"], ["p2", "North", 44566, "positive"], ["p3", "South", (DATE, 44567), "negative"]])], date1904=True)},
        expect(days="2026-01-05 1, 2026-01-06 1, 2026-01-07 1")),
    "workbook-dates-as-text-and-bare-numbers": ("text, and serials that were never formatted", {"screening.xlsx": workbook([sheet([HEADINGS,
        ["p1", "North", "2026-01-05T08:00", "negative"], ["p2", "North", 46028.5, "positive"], ["p3", "South", 46029, "negative"], ["p4", "South", 7, "negative"]])])},
        expect(ledger={"screening": "set-aside 1, counted 3"}, days="2026-01-05 1, 2026-01-06 1, 2026-01-07 1",
               findings=["warning unreadable-date screening.xlsx:5 collected_at x1"], setAside=["screening.xlsx:5 unreadable-date"])),
    "workbook-numbers-as-identifiers": ("text 002 stays 002, number 123.0 is 123, number 7 shown as 007 is 007: each finds its specimen", {
        "screening.xlsx": workbook([sheet([HEADINGS, ["002", "North", "2026-01-05T08:00", "positive"], [123.0, "North", "2026-01-05T08:05", "positive"], [(ZEROS, 7), "South", "2026-01-05T08:10", "positive"], [2, "South", "2026-01-05T08:15", "positive"]])]),
        "confirmatory.csv": "person,collected_at,result\n002,2026-01-05T12:00,positive\n123,2026-01-05T12:00,negative\n007,2026-01-05T12:00,positive\n"},
        expect(ledger={"screening": "counted 4", "confirmatory": "counted 3"}, outcomes="positive 4", followUp="confirmed 2, pending 1, refuted 1")),
    "workbook-yes-and-no": ("booleans in a column of yes and no", {"screening.xlsx": workbook([sheet([HEADINGS + ["symptomatic"], TEXT_ROWS[0] + [False], TEXT_ROWS[1] + [True], TEXT_ROWS[2] + [None]])])},
        expect(ledger={"screening": "kept-out-symptomatic 1, counted 2"}, outcomes="negative 2")),
    "workbook-with-cover-sheet": ("a cover, the log, and a hidden copy of it", {"screening.xlsx": workbook([sheet([["Quillmoor"], ["Log of January"]], "Cover"), LOG, sheet([HEADINGS] + TEXT_ROWS, "Copy", state="hidden")])},
        expect(files=["screening.xlsx: workbook, sheet Log, headings 1"])),
    "workbook-with-two-logs": ("two sheets that fit: nothing is guessed", {"screening.xlsx": workbook([sheet([HEADINGS] + TEXT_ROWS, "January"), sheet([HEADINGS] + TEXT_ROWS, "February")])},
        {"refused": ["error ambiguous-sheets screening.xlsx"]}),
    "workbook-with-named-sheets": ("the program file names both", {"screening.xlsx": workbook([sheet([HEADINGS] + TEXT_ROWS, "January"), sheet([["Log of February"], HEADINGS, ["p4", "South", "2026-02-05T08:00", "negative"], ["p5", "South", "soon", "negative"]], "February")]),
        "program.json": json.dumps({"exports": {"screening": {"sheets": ["January", "Feb*"]}}})},
        expect(ledger={"screening": "set-aside 1, counted 4"}, outcomes="negative 3, positive 1",
               files=["screening.xlsx (January): workbook, sheet January, headings 1", "screening.xlsx (February): workbook, sheet February, headings 2, before 1"],
               findings=["note lines-before-headings screening.xlsx (February):2 x1", "warning unreadable-date screening.xlsx (February):4 collected_at x1"], setAside=["screening.xlsx (February):4 unreadable-date"])),
    "workbook-without-the-named-sheet": ("a name that no sheet has", {"screening.xlsx": workbook([LOG]), "program.json": json.dumps({"exports": {"screening": {"sheets": ["Tests"]}}})},
        {"refused": ["error missing-sheet screening.xlsx"]}),
    "workbook-with-merged-headings": ("headings over two columns", {"screening.xlsx": workbook([sheet([["person", "site", "collected_at", "result", "place", None]] + TEXT_ROWS, merged=["E1:F1"])])},
        {"refused": ["error merged-headings screening.xlsx:1"]}),
    "workbook-with-merged-cells": ("a title over all columns is no matter; a site over two rows is", {"screening.xlsx": workbook([sheet([["Log", None, None, None], HEADINGS, TEXT_ROWS[0], ["p2", None, "2026-01-05T08:05", "positive"], TEXT_ROWS[2]], merged=["A1:D1", "B3:B4"])])},
        expect(ledger={"screening": "set-aside 1, counted 2"}, outcomes="negative 2",
               findings=["warning merged-cells screening.xlsx:3 x1", "note lines-before-headings screening.xlsx:2 x1", "warning missing-value screening.xlsx:4 site x1"], setAside=["screening.xlsx:4 missing-value"])),
    "workbook-with-errors": ("a failed formula, one that was never worked out, one that was, and a row of nothing but an error", {"screening.xlsx": workbook([sheet([HEADINGS, ["p1", "North", "2026-01-05T08:00", ("error", "#N/A")], ["p2", ("uncached", "B1"), "2026-01-05T08:05", "positive"], ["p3", ("formula", "South"), "2026-01-05T08:10", "negative"], [("error", "#REF!"), None, None, None]])])},
        expect(ledger={"screening": "set-aside 3, counted 1"}, outcomes="negative 1",
               findings=["warning error-cells screening.xlsx:2 x3", "warning missing-value screening.xlsx:2 result x1", "warning missing-value screening.xlsx:3 site x1", "warning blank-row screening.xlsx:5 x1"],
               setAside=["screening.xlsx:2 missing-value", "screening.xlsx:3 missing-value", "screening.xlsx:5 blank-row"])),
    "workbook-as-people-keep-them": ("a title, blank rows, units, a sum below; rows keep their numbers", {"screening.xlsx": workbook([sheet({1: ["Quillmoor: log of rapid tests"], 4: ["Badge (pseudonym)", "Site", "Collected at [local]", "Result"], 5: TEXT_ROWS[0], 6: TEXT_ROWS[1], 9: TEXT_ROWS[2], 10: ["p4", "South", "soon", "negative"], 12: ["Total", None, None, 4]})])},
        expect(files=["screening.xlsx: workbook, sheet Log, headings 4, before 1"], ledger={"screening": "set-aside 2, counted 3"},
               findings=["note lines-before-headings screening.xlsx:4 x1", "warning unreadable-date screening.xlsx:10 collected_at x1", "note totals-line screening.xlsx:12 x1"], setAside=["screening.xlsx:10 unreadable-date", "screening.xlsx:12 totals-line"])),
    "workbook-with-line-breaks": ("a line break in a cell moves no row", {"screening.xlsx": workbook([sheet([HEADINGS, ["p1", "North\ngate", "2026-01-05T08:00", "negative"], TEXT_ROWS[1], TEXT_ROWS[2], ["p4", "South", "soon", "negative"]])])},
        expect(ledger={"screening": "set-aside 1, counted 3"}, sites="North 1, North\ngate 1, South 1", findings=["warning unreadable-date screening.xlsx:5 collected_at x1"], setAside=["screening.xlsx:5 unreadable-date"])),
    "workbook-with-a-row-twice": ("a duplicate is found by row", {"screening.xlsx": workbook([sheet([HEADINGS] + TEXT_ROWS + [[], TEXT_ROWS[1]])])},
        expect(ledger={"screening": "duplicate 1, counted 3"}, findings=["warning duplicate screening.xlsx:6 x1"], setAside=["screening.xlsx:6 duplicate of 3"])),
    "workbook-in-gzip": ("a compressed workbook", {"screening.xlsx.gz": gzip.compress(workbook([LOG]), mtime=0)}, expect(files=["screening.xlsx.gz: workbook in gzip, sheet Log, headings 1"])),
    "workbook-with-password": ("what a password makes of a workbook", {"screening.xlsx": b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504)}, {"refused": ["error unreadable-workbook screening.xlsx"]}),
    "workbook-cut-off": ("the end of the file is missing", {"screening.xlsx": workbook([LOG])[:-200]}, {"refused": ["error unreadable-workbook screening.xlsx"]}),
    "workbook-without-a-column": ("the message speaks of the row that tries to be the headings", {"screening.xlsx": workbook([sheet([["Log"], ["person", "site", "collected_at", "colour"], ["p1", "North", "2026-01-05", "red"]])])},
        {"refused": ["error missing-column screening.xlsx:2 result", "note lines-before-headings screening.xlsx:2"]}),
    # -- resources
    "observations": ("results by code of value, by interpretation, by both; detected, not detected, inconclusive, unfit", {"screening.csv": POSITIVES, "confirmatory.ndjson": lines(
        observation("p1"), observation("p2", "260415000"), observation("p3", "419984006"), observation("p4", None, interpretation="POS"), observation("p5", "260415000", interpretation="NEG"), observation("p6", "125154007"))},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "counted 6"}, followUp="confirmed 2, refuted 2, unresolved 2", files=["screening.csv: delimited text, UTF-8, comma, headings 1", "confirmatory.ndjson: FHIR R4 Observation resources, UTF-8"])),
    "observations-not-final": ("withdrawn, preliminary, cancelled", {"screening.csv": POSITIVES, "confirmatory.ndjson": lines(
        observation("p1", status="entered-in-error"), observation("p2", status="amended"), "", observation("p3", status="preliminary"), observation("p4", status="cancelled"))},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "set-aside 3, counted 1"}, followUp="confirmed 1, pending 5",
               findings=["warning result-not-final confirmatory.ndjson:1 x3"], setAside=[f"confirmatory.ndjson:{n} result-not-final" for n in (1, 4, 5)])),
    "observations-malformed": ("half a line, a key twice, another resource, a list", {"screening.csv": POSITIVES, "confirmatory.ndjson": lines(
        observation("p1"), '{"resourceType":"Observation","status":', '{"resourceType":"Observation","status":"final","status":"final"}', '{"resourceType":"Patient","id":"p1"}', "[]")},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "set-aside 4, counted 1"}, followUp="confirmed 1, pending 5",
               findings=["warning malformed-line confirmatory.ndjson:2 x3", "warning not-an-observation confirmatory.ndjson:4 x1"],
               setAside=["confirmatory.ndjson:2 malformed-line", "confirmatory.ndjson:3 malformed-line", "confirmatory.ndjson:4 not-an-observation", "confirmatory.ndjson:5 malformed-line"])),
    "observations-that-contradict-themselves": ("detected, interpreted as negative; words against codes; an extension that may change it all", {"screening.csv": POSITIVES, "confirmatory.ndjson": lines(
        observation("p1", interpretation="NEG"), observation("p2", valueString="not detected"), observation("p3", modifierExtension=[{"url": "http://example.org/negated", "valueBoolean": True}]), observation("p4"))},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "set-aside 3, counted 1"}, followUp="confirmed 1, pending 5",
               findings=["warning contradictory-observation confirmatory.ndjson:1 x2", "warning modified-observation confirmatory.ndjson:3 x1"],
               setAside=["confirmatory.ndjson:1 contradictory-observation", "confirmatory.ndjson:2 contradictory-observation", "confirmatory.ndjson:3 modified-observation"])),
    "observations-with-gaps": ("no person, no time, a year only, a code that is not known, a text that is", {"screening.csv": POSITIVES, "confirmatory.ndjson": lines(
        observation("p1", subject={"display": "somebody"}), observation("p2", when=None), observation("p3", when="2026"), observation("p4", "840533007"), observation("p5", None, valueString="Detected"))},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "set-aside 4, counted 1"}, followUp="confirmed 1, pending 5",
               findings=["warning missing-value confirmatory.ndjson:1 person x1", "warning missing-value confirmatory.ndjson:2 collected_at x1", "warning unreadable-date confirmatory.ndjson:3 collected_at x1", "warning unknown-result confirmatory.ndjson:4 result x1"],
               setAside=["confirmatory.ndjson:1 missing-value", "confirmatory.ndjson:2 missing-value", "confirmatory.ndjson:3 unreadable-date", "confirmatory.ndjson:4 unknown-result"])),
    "observations-by-many-references": ("a whole address, a version, a urn, a business identifier", {"screening.csv": POSITIVES, "confirmatory.ndjson.gz": gzip.compress(lines(
        observation(subject={"reference": "https://lab.example/fhir/Patient/p1"}), observation(subject={"reference": "Patient/p2/_history/3"}), observation(subject={"reference": "urn:uuid:p3"}),
        observation(subject={"identifier": {"system": "http://example.org/badge", "value": "p4"}})).encode(), mtime=0)},
        expect(SIX, ledger={"screening": "counted 6", "confirmatory": "counted 4"}, followUp="confirmed 4, pending 2")),
    "observations-as-screening": ("resources where rows of runs are wanted", {"screening.ndjson": lines(observation())}, {"refused": ["error observations-elsewhere screening.ndjson"]}),
    "kits-that-are-telephone-numbers": ("numbers that people are called at, where kits are wanted", {"screening.csv": levels("kit", ["+43 1 23456789", "K-2", "K-3"])}, {"refused": ["error names-people screening.csv kit"]}),
    "kits-that-are-addresses": ("an e-mail address among kits", {"screening.csv": levels("kit", ["K-1", "ada@example.org", "K-3"])}, {"refused": ["error names-people screening.csv kit"]}),
    "lots-that-are-national-numbers": ("social security numbers where lots are wanted", {"screening.csv": levels("lot", ["123-45-6789", "123-45-6780", "A1"])}, {"refused": ["error names-people screening.csv lot"]}),
    "kits-with-numbers-of-packages": ("serial numbers as printed on packages, and one that only looks like a telephone number", {"screening.csv": levels("kit", ["(21)1234567", "(21)1234568", "123-456-7890"])}, THREE),
    "sites-of-first-names": ("sites that may be people", {"screening.csv": levels("site", ["Maria", "Peter", "North"])}, expect(findings=["warning identifier-levels screening.csv site x1"], sites="Maria 1, North 1, Peter 1")),
    "an-order-of-dates-that-no-longer-holds": ("month-first stated, one date that only day-first can be", {"program.json": '{ "exports": { "screening": { "dateOrder": "month-first" } } }\n',
        "screening.csv": HEAD + "p1,North,2026-01-05T08:00,negative\np2,North,1/5/2026,positive\np3,South,13/1/2026,negative\np4,South,2026-01-05,negative\n"},
        expect(ledger={"screening": "set-aside 1, counted 3"}, findings=["warning unreadable-date screening.csv:4 collected_at x1"], setAside=["screening.csv:4 unreadable-date"], days="2026-01-05 3")),
    "gzip-bomb": ("a hundred megabytes of nothing", {"screening.csv.gz": gzip.compress(PLAIN.encode() + b"\n" * (100 << 20), mtime=0)}, {"refused": ["error suspicious-archive screening.csv.gz"]}),
    "workbook-of-one-text-a-million-times": ("cells that all refer to one long text", {"screening.xlsx": amplified()}, {"refused": ["error suspicious-archive screening.xlsx"]}),
    "workbook-with-a-part-that-leads-out": ("a part called ../../outside.xml", {"screening.xlsx": with_part(workbook([LOG]), "../../outside.xml")}, THREE),
}

if __name__ == "__main__":
    for name, (about, files, expected) in CASES.items():
        folder = os.path.join(HERE, name)
        shutil.rmtree(folder, ignore_errors=True)
        for file, content in files.items():
            path = os.path.join(folder, file)
            os.makedirs(os.path.dirname(path), exist_ok=True)
            with open(path, "wb") as out:
                out.write(content if isinstance(content, bytes) else content.encode())
        with open(os.path.join(folder, "expected.json"), "w", encoding="utf-8", newline="\n") as out:
            json.dump({"about": about, **expected}, out, indent=2, ensure_ascii=False)
            out.write("\n")
    print(len(CASES), "cases")
