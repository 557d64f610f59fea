#!/usr/bin/env python3
"""Writes the cases of the corpus that are about conduct and sense: python3 conduct.py (standard library only).

One oddity each; expected.json is written by hand here and never by the code under test. People, sites and lots are fictional.
"""
import json, os, shutil

HERE = os.path.dirname(os.path.abspath(__file__))
HEAD = "person,site,collected_at,result,lot,kit,lot_expiry,read_at,operator\n"


def run(person="p1", site="North", at="2026-01-05T08:00", result="negative", lot="A1", kit="k1", expiry="2026-12-31", read="", operator="o1"):
    return f"{person},{site},{at},{result},{lot},{kit},{expiry},{read},{operator}\n"


def runs(*rows):
    return HEAD + "".join(rows)


def confirmatory(*rows):
    return "person,collected_at,result,reported_at\n" + "".join(f"{row}\n" for row in rows)


def people(count, start=1, **same):
    return [run(f"p{i}", at=f"2026-01-05T08:{i % 60:02}", **same) for i in range(start, start + count)]


def found(*findings, outcomes, ledger=None, **more):
    total = sum(int(part.split(" ")[1]) for part in outcomes.split(", "))
    return {"ledger": ledger or {"screening": f"counted {total}"}, "findings": list(findings), "setAside": [], "outcomes": outcomes, **more}


WINDOW = '{ "screens": [ { "name": "rapid test", "readWindowMinutes": [15, 30], "runsPerKit": 3 } ] }\n'

CASES = {
    "times-after-the-stated-date": ("a year mistyped; the program file says when the data end", {
        "program.json": '{ "dataAsOf": "2026-01-31" }\n',
        "screening.csv": runs(run("p1"), run("p2", at="2026-01-31T23:59:59"), run("p3", at="2026-02-01T00:00:00"), run("p4", at="2062-01-05T08:00"))},
        found("warning time-in-the-future screening.csv:4 collected_at x2", "warning expired-lot screening.csv:5 lot_expiry x1", outcomes="negative 4", firstLines=["time-in-the-future: 4, 5"])),
    "times-long-after-all-others": ("a year mistyped; nothing says when the data end", {
        "screening.csv": runs(*people(12), run("p13", at="2036-01-05T08:00"))},
        found("warning time-in-the-future screening.csv:14 collected_at x1", "warning expired-lot screening.csv:14 lot_expiry x1", outcomes="negative 13")),
    "times-before-the-program": ("last year's date in January; the program file says when it started", {
        "program.json": '{ "startsOn": "2026-01-05" }\n',
        "screening.csv": runs(run("p1"), run("p2", at="2026-01-04T23:59"), run("p3", at="2025-01-06T08:00"))},
        found("warning time-before-program screening.csv:3 collected_at x2", outcomes="negative 3", firstLines=["time-before-program: 3, 4"])),
    "times-of-a-clock-not-set": ("1970-01-01 among the dates of a program, in both exports", {
        "screening.csv": runs(run("p0", at="1970-01-01T00:00"), *people(3)),
        "confirmatory.csv": confirmatory("p1,2026-01-05T10:00,negative,", "p2,1970-01-01T00:00,negative,", "p3,2026-01-05T10:00,negative,")},
        found("warning time-before-program screening.csv:2 collected_at x1", "warning time-before-program confirmatory.csv:3 collected_at x1", outcomes="negative 4",
              ledger={"screening": "counted 4", "confirmatory": "counted 3"})),
    "read-outside-the-window": ("too early, too late, and before it was collected; both ends of the window are allowed", {
        "program.json": WINDOW,
        "screening.csv": runs(*(run(f"p{i}", kit=f"k{i}", at="2026-01-05T08:00", read=f"2026-01-05T{read}") for i, read in enumerate(["08:15", "08:30", "08:14", "08:31", "07:59", "08:45"])))},
        found("warning read-before-collected screening.csv:6 read_at x1", "warning read-too-early screening.csv:4 read_at x1", "warning read-too-late screening.csv:5 read_at x2",
              outcomes="negative 6", firstLines=["read-too-late: 5, 7"])),
    "an-expired-lot": ("the last day is still allowed", {
        "screening.csv": runs(run("p1", expiry="2026-01-05"), run("p2", expiry="2026-01-04"), run("p3", expiry="2025-12"))},
        found("warning expired-lot screening.csv:3 lot_expiry x2", outcomes="negative 3", firstLines=["expired-lot: 3, 4"])),
    "more-runs-than-a-kit-holds": ("a kit of three used five times", {
        "program.json": WINDOW,
        "screening.csv": runs(run("p0", kit="k2"), *people(5))},
        found("warning beyond-kit-contents screening.csv:3 kit x2", outcomes="negative 6")),
    "two-lots-in-a-kit": ("the number of a box is the same at two sites, which is in order; two lots in one box are not", {
        "screening.csv": runs(run("p1"), run("p2", site="South", lot="B2"), run("p3", lot="B2"), run("p4", lot="B2"))},
        found("warning lots-mixed-in-kit screening.csv:4 kit x1", outcomes="negative 4")),
    "one-person-at-two-sites": ("on one day; the next day is in order", {
        "screening.csv": runs(run("p1"), run("p1", site="South", at="2026-01-05T15:00"), run("p1", site="South", at="2026-01-06T15:00"), run("p2", site="South"))},
        found("warning two-sites-on-one-day screening.csv:3 site x1", outcomes="negative 4")),
    "two-results-within-minutes": ("after a valid run; after an invalid one a second is asked for; five minutes are enough", {
        "screening.csv": runs(run("p1"), run("p1", at="2026-01-05T08:04:59", lot="A2", kit="k2"), run("p2", result="invalid"), run("p2", at="2026-01-05T08:02"), run("p3"), run("p3", at="2026-01-05T08:05"))},
        found("warning results-within-minutes screening.csv:3 collected_at x1", outcomes="invalid 1, negative 5")),
    "rows-that-differ-in-one-column": ("entered twice, the second time with another lot; with two other columns it is another run", {
        "screening.csv": runs(run("p1"), run("p1", lot="A2"), run("p2"), run("p2", result="positive"), run("p3"), run("p3", lot="A2", operator="o2"))},
        found("warning lots-mixed-in-kit screening.csv:3 kit x1", "warning results-within-minutes screening.csv:7 collected_at x1", "warning near-duplicate screening.csv:3 x2", outcomes="negative 5, positive 1",
              firstLines=["near-duplicate: 3, 5"])),
    "an-export-joined-with-itself": ("every run twice, with another identifier", {
        "screening.csv": "screen_id," + HEAD + "".join(f"s{i},{run(f'p{i % 3}')}" for i in range(6))},
        found("warning near-duplicate screening.csv:5 x3", outcomes="negative 6", firstLines=["near-duplicate: 5, 6, 7"])),
    "screened-while-isolating": ("within five days of a confirmatory positive", {
        "program.json": '{ "policy": { "isolationDays": 5 } }\n',
        "screening.csv": runs(run("p1", result="positive"), run("p1", at="2026-01-10T09:50"), run("p1", at="2026-01-10T10:10"), run("p2", at="2026-01-06T08:00")),
        "confirmatory.csv": confirmatory("p1,2026-01-05T10:00,positive,2026-01-06T08:00")},
        found("warning within-isolation screening.csv:3 person x1", outcomes="negative 3, positive 1", ledger={"screening": "counted 4", "confirmatory": "counted 1"}, followUp="confirmed 1")),
    "reported-before-collected": ("the report comes first", {
        "screening.csv": runs(run("p1", result="positive"), run("p2")),
        "confirmatory.csv": confirmatory("p1,2026-01-05T10:00,positive,2026-01-05T09:00")},
        found("warning report-before-collection confirmatory.csv:2 reported_at x1", outcomes="negative 1, positive 1", ledger={"screening": "counted 2", "confirmatory": "counted 1"}, followUp="confirmed 1")),
    "people-never-screened": ("pseudonyms of another key", {
        "screening.csv": runs(run("p1", result="positive"), run("p2")),
        "confirmatory.csv": confirmatory("p1,2026-01-05T10:00,positive,", "x7,2026-01-05T10:00,negative,", "x8,2026-01-05T10:00,negative,", "x8,2026-01-06T10:00,negative,")},
        found("warning persons-never-screened confirmatory.csv:3 person x2", outcomes="negative 1, positive 1", ledger={"screening": "counted 2", "confirmatory": "counted 4"}, followUp="confirmed 1",
              firstLines=["persons-never-screened: 3, 4"])),
    "clocks-eight-hours-apart": ("specimens collected an hour after the run, written in a time zone eight hours behind", {
        "screening.csv": runs(*(run(f"p{i}", at=f"2026-01-{i:02}T12:00", result="positive") for i in range(5, 17)), run("q1")),
        "confirmatory.csv": confirmatory(*(f"p{i},2026-01-{i:02}T05:00,positive," for i in range(5, 17)))},
        found("warning shifted-clock collected_at x12", "note outside-follow-up-coverage screening.csv:2 collected_at x6", outcomes="negative 1, positive 12",
              ledger={"screening": "counted 13", "confirmatory": "counted 12"}, followUp="pending 6, unverified 6")),
    "lots-spelled-in-two-ways": ("case, blanks, and O for 0; a hyphen is another lot", {
        "screening.csv": runs(run("p1", lot="A10"), run("p2", lot="A10"), run("p3", lot="a1O", kit="k2"), run("p4", lot="A 10", kit="k3"), run("p5", lot="A-10", kit="k4"))},
        found("warning lot-spelled-twice screening.csv:4 lot x2", outcomes="negative 5", firstLines=["lot-spelled-twice: 4, 5"])),
    "sites-spelled-in-two-ways": ("one with a capital, one without", {
        "screening.csv": runs(run("p1"), run("p2"), run("p3", site="north"))},
        found("warning site-spelled-twice screening.csv:4 site x1", outcomes="negative 3", sites="North 2, north 1")),
    "a-site-without-negatives": ("only its positives were exported; four are too few to say so", {
        "screening.csv": runs(*people(5, result="positive"), *(run(f"q{i}", site="South", at=f"2026-01-05T09:{i:02}", result="positive") for i in range(4)), run("r1", site="East"))},
        found("warning no-negatives screening.csv:2 result x1", outcomes="negative 1, positive 9")),
    "every-time-on-the-hour": ("times entered as the hour of the shift", {
        "screening.csv": runs(*(run(f"p{i}", at=f"2026-01-{5 + i % 10:02}T{7 + i % 8:02}:00") for i in range(60)))},
        found("note one-minute-of-the-hour screening.csv:2 collected_at x60", outcomes="negative 60")),
    "one-operator-for-nearly-all": ("the form fills in the first of three", {
        "screening.csv": runs(*(run(f"p{i}", at=f"2026-01-{5 + i % 10:02}T{7 + i // 60:02}:{i % 60:02}", operator="o2" if i == 7 else "o3" if i == 9 else "o1") for i in range(100)))},
        found("note one-operator screening.csv:2 operator x98", outcomes="negative 100")),
    "one-result-for-a-day": ("ten invalid runs and nothing else", {
        "screening.csv": runs(run("p0", at="2026-01-04T08:00"), *people(10, result="invalid"))},
        found("warning one-result-for-a-day screening.csv:3 result x1", outcomes="invalid 10, negative 1", firstLines=["one-result-for-a-day: 3, 4, 5, 6, 7"])),
    "runs-outside-follow-up": ("the laboratory's export starts a week later than the program, and ends earlier", {
        "program.json": '{ "dataAsOf": "2026-01-31" }\n',
        "screening.csv": runs(run("p1", result="positive"), run("p2", result="positive", at="2026-01-12T08:00"), run("p3", result="positive", at="2026-01-20T08:00"), run("p4", result="positive", at="2026-01-15T08:00"),
                              run("p5", result="positive", at="2026-01-18T08:00"), run("p6")),
        "confirmatory.csv": confirmatory("p2,2026-01-12T10:00,positive,2026-01-13T08:00", "p5,2026-01-18T10:00,negative,2026-01-19T08:00")},
        found("note outside-follow-up-coverage screening.csv:2 collected_at x2", outcomes="negative 1, positive 5", ledger={"screening": "counted 6", "confirmatory": "counted 2"},
              followUp="confirmed 1, refuted 1, unverified 3", firstLines=["outside-follow-up-coverage: 2, 4"])),
}

if __name__ == "__main__":
    for name, (about, files, expected) in CASES.items():
        folder = os.path.join(HERE, name)
        shutil.rmtree(folder, ignore_errors=True)
        os.makedirs(folder)
        for file, content in files.items():
            with open(os.path.join(folder, file), "w", encoding="utf-8", newline="\n") as out:
                out.write(content)
        with open(os.path.join(folder, "expected.json"), "w", encoding="utf-8", newline="\n") as out:
            json.dump({"about": about, **expected}, out, indent=2, ensure_ascii=False)
            out.write("\n")
    print(len(CASES), "cases")
