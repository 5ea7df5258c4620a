"""The order of work: its critical path by a graph library, its calendar by another reader of iCalendar.

networkx is asked on files in which everybody works round the clock with hands enough: then the calendar is the network, and the begin
of each step is the longest path to it. The working calendar of the examples is reckoned once more here, minute by minute.
"""

import csv
import datetime as dt
import itertools
import random

import icalendar
import networkx as nx
import pytest
import yaml
from conftest import EXAMPLES, ROOT, run


def written(name):
    """The file of an example, every value as text."""
    return yaml.load((ROOT / "params" / f"{name}.yaml").read_text(), Loader=yaml.BaseLoader)


# The examples whose work has a first day.
dated = pytest.mark.parametrize("example", [n for n in EXAMPLES if "start" in written(n).get("work", {})], indirect=True)

ROUND_THE_CLOCK = """
project: {title: Trial, date: 2027-01-01}
runs: [{name: cook, length: 8 ft, depth: 30 in}]
appliances:
  - {name: grill, at: {from: left, distance: 30 in}, cutout: {width: 30 in, depth: 20 in}, body: {height: 9 in},
     front: {closed: {setback: 4 in}}, fuel: propane, weight: 90 lb}
  - {name: sink, at: {from: right, distance: 20 in}, cutout: {width: 15 in, depth: 15 in}, body: {height: 7 in},
     front: {closed: {setback: 6 in}}, drain: {size: 1-1/2 in, length: 3 ft, fall: 1 in}}
openings:
  - {name: doors, kind: door, at: {in_line_with: grill}, width: 24 in, height: 18 in, sill: 5 in}
counter: {reinforcement: {mesh: 1/8 in, mesh_spacing: 2 in, cover: 3/4 in}}
work:
  start: 2027-05-03
  days: [mon, tue, wed, thu, fri, sat, sun]
  hours: 00:00 to 24:00
  crew: 100
  trades: {days: [mon, tue, wed, thu, fri, sat, sun], hours: 00:00 to 24:00}
"""


def table(folder, name):
    with open(folder / "site" / f"{name}.csv", newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def moment(text):
    return dt.datetime.fromisoformat(text)


def hours(span):
    return span.total_seconds() / 3600


def network(folder):
    """Steps and links as a graph whose longest paths are the earliest begins."""
    steps, waits = table(folder, "steps"), table(folder, "step-waits")
    graph = nx.DiGraph()
    for step in steps:
        graph.add_edge(step["step"], step["step"] + " done", hours=float(step["takes [h]"]))
    for wait in waits:
        edge = (wait["after"] + " done", wait["step"])
        assert not graph.has_edge(*edge), "two waits between the same steps"
        graph.add_edge(*edge, hours=float(wait["wait [h]"]))
    return graph, steps


def longest_to(graph):
    """The longest path to each node."""
    far = dict.fromkeys(graph, 0.0)
    for node in nx.topological_sort(graph):
        for _, after, hour in graph.out_edges(node, data="hours"):
            far[after] = max(far[after], far[node] + hour)
    return far


def built(tmp_path, program, text, ok=(0, 1)):
    file = tmp_path / "case.yaml"
    file.write_text(text)
    run(program, "build", file, "--out", tmp_path / "out", "--only", "site", ok=ok)
    return tmp_path / "out" / "case"


def held_against_networkx(folder):
    graph, steps = network(folder)
    assert nx.is_directed_acyclic_graph(graph)
    far, back = longest_to(graph), longest_to(graph.reverse())
    whole = nx.dag_longest_path_length(graph, weight="hours")
    first = min(moment(s["start"]) for s in steps)
    last = max(moment(s["end"]) for s in steps)
    assert hours(last - first) == pytest.approx(whole, abs=0.02)
    for step in steps:
        name = step["step"]
        assert hours(moment(step["start"]) - first) == pytest.approx(far[name], abs=0.02), name
        slack = whole - far[name] - back[name]
        assert float(step["float [h]"]) == pytest.approx(slack, abs=0.02), name
        assert (step["critical"] == "yes") == (slack < 0.02), name
    path = nx.dag_longest_path(graph, weight="hours")
    critical = {s["step"] for s in steps if s["critical"] == "yes"}
    assert {n for n in path if not n.endswith(" done")} <= critical
    return len(steps)


def test_the_critical_path_is_the_longest_path(tmp_path, program):
    assert held_against_networkx(built(tmp_path, program, ROUND_THE_CLOCK)) > 25


@pytest.mark.parametrize("seed", range(12))
def test_changed_orders_too(tmp_path, program, seed):
    """Random hours and random forerunners: always of lower number in the trade's own order, so that there is no circle."""
    draw = random.Random(seed)
    usual = built(tmp_path, program, ROUND_THE_CLOCK.split("work:")[0])
    names = [s["step"] for s in table(usual, "steps")]
    # What belongs to the pour is one block, and stays.
    fixed = {"pour-hold", "pour", "finish"}
    changes = []
    for number, name in enumerate(names[1:], 1):
        if name in fixed or draw.random() < 0.4:
            continue
        earlier = draw.sample(names[:number], min(number, draw.randint(1, 3)))
        after = ", ".join(e if draw.random() < 0.5 else f"{e} + {draw.randint(1, 200)} h" for e in earlier)
        changes.append(f"    - {{step: {name}, takes: {draw.randint(1, 40)} h, after: [{after}]}}")
    folder = built(tmp_path, program, ROUND_THE_CLOCK + "  steps:\n" + "\n".join(changes) + "\n")
    assert len(changes) > 5
    held_against_networkx(folder)


def test_a_circle_is_named_and_the_rest_is_done(tmp_path, program):
    text = ROUND_THE_CLOCK + "  steps: [{step: forms, after: [seal]}]\n"
    folder = built(tmp_path, program, text, ok=(1,))
    graph, steps = network(folder)
    assert nx.is_directed_acyclic_graph(graph) and len(steps) > 25


@dated
def test_the_calendar_is_read_and_says_what_the_table_says(example):
    steps = table(example.folder, "steps")
    raw = (example.folder / "site" / "work.ics").read_bytes()
    lines = raw.split(b"\r\n")
    assert lines[-1] == b"" and all(len(line) <= 75 and b"\n" not in line for line in lines)
    for line in lines:
        line.decode("utf-8")
    calendar = icalendar.Calendar.from_ical(raw)
    assert not calendar.errors
    events = list(calendar.walk("VEVENT"))
    assert all(not e.errors for e in events)
    by_uid = {str(e["UID"]): e for e in events}
    assert len(by_uid) == len(events)
    work = [e for e in events if str(e["TRANSP"]) == "OPAQUE"]
    assert len(work) == len(steps)
    for step in steps:
        event = next(e for e in work if str(e["UID"]).split(".")[0] == step["step"])
        assert event.decoded("DTSTART") == moment(step["start"])
        end = event.decoded("DTEND") if "DTEND" in event else event.decoded("DTSTART")
        assert end == moment(step["end"])
        assert event.decoded("DTSTART").tzinfo is None
        assert str(event["SUMMARY"]).endswith(step["name"])
        assert str(event["SUMMARY"]).startswith("HOLD: ") == (step["hold point"] == "yes")
        if step["caution"]:
            assert step["caution"].split(". ")[0] in str(event["DESCRIPTION"])
    for event in events:
        assert event.decoded("DTSTAMP").tzinfo is not None


@dated
def test_waits_in_the_calendar_are_those_of_the_table(example):
    steps = {s["step"]: s for s in table(example.folder, "steps")}
    waits = [w for w in table(example.folder, "step-waits") if float(w["wait [h]"]) >= 6]
    calendar = icalendar.Calendar.from_ical((example.folder / "site" / "work.ics").read_bytes())
    events = {str(e["UID"]).rsplit(".", 2)[0]: e for e in calendar.walk("VEVENT") if str(e["TRANSP"]) == "TRANSPARENT"}
    assert waits
    for wait in waits:
        event = next(e for uid, e in events.items() if uid.startswith(f"{wait['after']}.{wait['step']}"))
        assert event.decoded("DTSTART") == moment(steps[wait["after"]]["end"])
        assert hours(event.decoded("DTEND") - event.decoded("DTSTART")) == pytest.approx(float(wait["wait [h]"]), abs=0.02)


def working(name):
    """The crew's and the trades' hours of an example, from its file."""
    work = written(name)["work"]
    names = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]

    def shift(group, usual):
        days = {names.index(d) for d in group.get("days", names[:5])}
        begin, end = (dt.time.fromisoformat(t) for t in group.get("hours", usual).split(" to "))
        return days, begin, end

    off = {dt.date.fromisoformat(d) for d in work.get("off", [])}
    own = shift(work, "08:00 to 17:00")
    trades = shift(work.get("trades", {}), "08:00 to 16:00")
    return own, trades, off, int(work.get("crew", 2))


@dated
def test_nobody_works_at_night_nor_with_hands_that_are_not_there(example):
    steps = table(example.folder, "steps")
    own, trades, off, crew = working(example.name)
    block = {"pour-hold", "pour", "finish"}
    minutes = {}
    for step in steps:
        if step["step"] in block:
            shift = None
        else:
            shift = own if step["by"] == "own hands" else trades
        at, end, worked = moment(step["start"]), moment(step["end"]), []
        while at < end:
            day_off = shift and (at.date() in off or at.weekday() not in shift[0])
            if shift is None or (not day_off and shift[1] <= at.time() < shift[2]):
                worked.append(at)
            at += dt.timedelta(minutes=1)
        takes = float(step["takes [h]"]) * 60
        # Coats leave out hours that are too cold or too hot: which, this test does not know.
        is_coat = "40 to 90" in step["weather"]
        assert len(worked) >= takes - 1 if is_coat else abs(len(worked) - takes) <= 1, step["step"]
        if step["by"] == "own hands" and abs(len(worked) - takes) <= 1:
            for at in worked:
                minutes[at] = minutes.get(at, 0) + min(int(step["hands"]), crew)
    assert max(minutes.values()) <= crew


@dated
def test_no_step_begins_before_what_it_waits_for(example):
    steps = {s["step"]: s for s in table(example.folder, "steps")}
    for wait in table(example.folder, "step-waits"):
        apart = moment(steps[wait["step"]]["start"]) - moment(steps[wait["after"]]["end"])
        assert hours(apart) >= float(wait["wait [h]"]) - 0.02, wait


def test_every_hold_point_has_its_checklist(example):
    steps = table(example.folder, "steps")
    ticks = table(example.folder, "checklist")
    holds = [s["step"] for s in steps if s["hold point"] == "yes"]
    assert "pour-hold" in holds
    for hold in holds:
        own = [t for t in ticks if t["step"] == hold]
        assert len(own) >= 3 and all(t["hold point"] == "yes" for t in own)
    # Numbered through, no number twice.
    numbers = [t["no."] for t in ticks]
    assert len(set(numbers)) == len(numbers)
    assert all(a != b for a, b in itertools.pairwise(numbers))
