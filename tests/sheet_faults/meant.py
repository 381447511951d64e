"""What of the circuit's file the checker needs: to which net a line belongs and how many ports of
which component a net joins. Junctions and ports of assemblies only join."""

import collections
import dataclasses
import pathlib
import xml.etree.ElementTree as ElementTree


@dataclasses.dataclass
class Meant:
    net_of: dict = dataclasses.field(default_factory=dict)  # path of a line -> its net
    # Net -> {path of a component: number of its ports}, in the order of the file.
    ports: dict = dataclasses.field(default_factory=lambda: collections.defaultdict(dict))


class _Reader:
    def __init__(self):
        self.parent = {}
        self.lines = []  # (path, ports)
        self.joining = set()  # paths of junctions and assemblies

    def find(self, port):
        while self.parent.setdefault(port, port) != port:
            port = self.parent[port]
        return port

    def join(self, ports):
        for port in ports:
            self.parent[self.find(port)] = self.find(ports[0])

    def read(self, parent, prefix, folder):
        for element in parent:
            path = prefix + element.get("id", "")
            if element.tag in ("line", "hose"):
                ports = [prefix + p for p in element.get("joins").split()]
                self.lines.append((path, ports))
                self.join(ports)
            elif element.tag == "junction":
                self.joining.add(path)
                self.join([f"{path}.{p.get('id')}" for p in element.findall("port")])
            elif element.tag in ("assembly", "use"):
                self.joining.add(path)
                inner, base = element, folder
                if element.tag == "use":
                    file = folder / element.get("file")
                    inner, base = ElementTree.parse(file).getroot(), file.parent
                self.read(inner, path + "/", base)
                for port in inner.findall("port"):
                    self.join([f"{path}.{port.get('id')}", f"{path}/{port.get('of')}"])


def load(path):
    path = pathlib.Path(path)
    reader = _Reader()
    reader.read(ElementTree.parse(path).getroot(), "", path.parent)
    members = collections.defaultdict(list)
    for port in list(reader.parent):
        members[reader.find(port)].append(port)
    meant = Meant()
    for name, ports in reader.lines:
        if ports:
            meant.net_of[name] = net = reader.find(ports[0])
            if net in meant.ports:
                continue
            for port in members[net]:
                component = port.rpartition(".")[0]
                if component not in reader.joining:
                    meant.ports[net][component] = meant.ports[net].get(component, 0) + 1
    return meant
