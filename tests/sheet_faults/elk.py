"""The same boxes and ports given to a general-purpose layered engine (elkjs, of npm): what a reader
would have to follow on its sheet. It is given neither shafts nor room for words, which the
program's sheets have; direction down and each net a chain of edges in the order of the file serve
it best."""

import itertools
import json
import pathlib
import subprocess

import tally
from ink import Group, Stroke

# Lines 2 M apart, as the program keeps them; symbols as far from lines, and from each other.
OPTIONS = {
    "elk.algorithm": "layered", "elk.direction": "DOWN", "elk.edgeRouting": "ORTHOGONAL",
    "elk.spacing.edgeEdge": "5", "elk.spacing.edgeNode": "5", "elk.spacing.nodeNode": "5",
    "elk.layered.spacing.edgeEdgeBetweenLayers": "5",
    "elk.layered.spacing.edgeNodeBetweenLayers": "5",
    "elk.layered.spacing.nodeNodeBetweenLayers": "5"}
SIDES = {"NORTH": (0, -1), "SOUTH": (0, 1), "WEST": (-1, 0), "EAST": (1, 0)}


def _side(stub, place):
    """The side of its symbol on which a port is: the way out along its stub."""
    far = max((stub.p, stub.q), key=lambda p: abs(p[0] - place[0]) + abs(p[1] - place[1]))
    dx, dy = place[0] - far[0], place[1] - far[1]
    if abs(dx) > abs(dy):
        return "EAST" if dx > 0 else "WEST"
    return "SOUTH" if dy > 0 else "NORTH"


def graph(checker):
    """The graph of a checked sheet in the engine's format."""
    nodes = {}
    for group, box in tally.boxes_of(checker.sheet).items():
        nodes[group] = {"id": f"s{group.number}", "x": box[0], "y": box[1],
                        "width": box[2] - box[0], "height": box[3] - box[1], "ports": [],
                        "layoutOptions": {"elk.portConstraints": "FIXED_POS"}}
    chains = {}
    for (net, group, place), stub in checker.contacts.items():
        node, side = nodes[group], _side(stub, place)
        x, y = place[0] - node["x"], place[1] - node["y"]
        x = {"WEST": 0.0, "EAST": node["width"]}.get(side, x)
        y = {"NORTH": 0.0, "SOUTH": node["height"]}.get(side, y)
        port = f"{node['id']}.{len(node['ports'])}"
        node["ports"].append({"id": port, "x": x, "y": y, "width": 0, "height": 0,
                              "layoutOptions": {"elk.port.side": side}})
        order = list(checker.meant.ports[net]).index(group.name)
        chains.setdefault(net, []).append((order, group.number, place, port))
    edges = []
    for net, ports in sorted(chains.items()):
        for (*_, a), (*_, b) in itertools.pairwise(sorted(ports)):
            edges.append({"id": f"e{len(edges)} {net}", "sources": [a], "targets": [b]})
    for node in nodes.values():
        del node["x"], node["y"]
    return {"id": "sheet", "layoutOptions": OPTIONS, "children": list(nodes.values()),
            "edges": edges}


def tallied(placed):
    """The tally of a graph with places."""
    nets, stubs, boxes = {}, [], []
    for node in placed["children"]:
        x, y = node["x"], node["y"]
        boxes.append((x, y, x + node["width"], y + node["height"]))
        for port in node["ports"]:
            at = x + port["x"], y + port["y"]
            dx, dy = SIDES[port["layoutOptions"]["elk.port.side"]]
            stubs.append((at, Stroke(at, (at[0] - dx, at[1] - dy), 0.0, None, "symbol")))
    for edge in placed["edges"]:
        group = Group("line", edge["id"].partition(" ")[2], 0)
        for section in edge.get("sections", ()):
            points = [section["startPoint"], *section.get("bendPoints", ()), section["endPoint"]]
            for a, b in itertools.pairwise([(p["x"], p["y"]) for p in points]):
                if a != b:
                    nets.setdefault(group.name, []).append(Stroke(a, b, 0.0, group, "line"))
    return tally.of(nets, stubs, boxes)


def tallies(graphs):
    """The engine's tally of each graph; RuntimeError where it is not installed."""
    run = subprocess.run(["node", pathlib.Path(__file__).with_name("elk.js")], text=True,
                         input=json.dumps(graphs), capture_output=True, check=False)
    if run.returncode != 0:
        raise RuntimeError("node with elkjs does not run (see elk.js): " + run.stderr[-300:])
    return [tallied(placed) for placed in json.loads(run.stdout)]
