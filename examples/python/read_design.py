"""Prints the guide positions of a design, with nothing but the schema and Protocol Buffers (Debian: python3-protobuf).

Run, from the top of this repository:

    mkdir -p /tmp/withy_py && protoc -Iproto --python_out=/tmp/withy_py proto/withy/v1/*.proto
    PYTHONPATH=/tmp/withy_py /usr/bin/python3 examples/python/read_design.py examples/designs/casting.txtpb

One guide a line, in the order of the file: id, then mm from the tip-top's ring centre to the guide's ring centre.
"""

import sys

from google.protobuf import json_format, text_format
from withy.v1 import design_pb2

# A quantity has exactly one unit; 254 / 10 keeps what the author wrote exact where 25.4 would not.
MM = {"mm": lambda x: x, "inch": lambda x: x * 254 / 10, "in64": lambda x: x * 254 / 640}


def read(data):
    """The design in any of its three forms, told apart by how it begins."""
    design = design_pb2.Design()
    if data.startswith(b"\n\x07withy/"):  # field 1, seven bytes: `format` comes first
        design.ParseFromString(data)
    elif data.lstrip().startswith(b"{"):
        json_format.Parse(data, design)
    else:
        text_format.Parse(data, design)
    return design


def mm(length):
    """A Length in mm, or None where it has no unit: not known, never zero."""
    unit = length.WhichOneof("unit")
    return MM[unit](getattr(length, unit)) if unit else None


def main(path):
    with open(path, "rb") as file:
        design = read(file.read())
    for guide in design.guides:
        place = mm(guide.from_tip)
        print(guide.id, "not known" if place is None else f"{place:.3f} mm")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: read_design.py DESIGN")
    main(sys.argv[1])
