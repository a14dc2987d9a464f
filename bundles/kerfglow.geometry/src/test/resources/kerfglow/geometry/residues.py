# SPDX-License-Identifier: Apache-2.0
"""Writes residues.csv: what GEOS says a disc leaves of a few shapes, for BitReachOracleTest.

Run: python3 residues.py > residues.csv    (packages python3-shapely and python3-numpy)
Columns: name; diameter; area inside the shape that a disc inside it does not reach; area outside that a disc outside does not
reach; shape. Shapes have few, long edges, because GEOS simplifies the input of a buffer by a share of the distance.
"""
import math
import random

import shapely
from shapely import geos
from shapely.geometry import MultiPoint, Point, Polygon, box
from shapely.ops import unary_union

SEGMENTS = 1024


def star(seed, corners, inner, outer):
    chance = random.Random(seed)
    points = []
    for i in range(corners):
        angle = 2 * math.pi * (i + 0.6 * chance.random()) / corners
        radius = chance.uniform(inner, outer)
        points.append((round(radius * math.cos(angle), 3), round(radius * math.sin(angle), 3)))
    return Polygon(points)


def comb(seed, teeth):
    chance = random.Random(seed)
    top, x = [], 0.0
    for _ in range(teeth):
        tooth, slot = chance.uniform(3, 9), chance.uniform(1.5, 9)
        top += [(x, chance.uniform(20, 40)), (x + tooth, chance.uniform(20, 40)),
                (x + tooth + chance.uniform(0, slot / 3), chance.uniform(5, 12)), (x + tooth + slot * 0.7, chance.uniform(5, 12))]
        x += tooth + slot
    points = [(0, 0)] + top + [(x, 30), (x + 5, 30), (x + 5, 0)]
    return Polygon([(round(a, 3), round(b, 3)) for a, b in points])


def plate(seed):
    chance = random.Random(seed)
    holes = [box(x, y, x + chance.uniform(2, 16), y + chance.uniform(2, 16)) for x in (5, 30, 55) for y in (5, 30)]
    return box(0, 0, 80, 55).difference(unary_union(holes))


def left(shape, radius):
    opened = shape.buffer(-radius, SEGMENTS).buffer(radius, SEGMENTS)
    closed = shape.buffer(radius, SEGMENTS).buffer(-radius, SEGMENTS)
    return shape.area - opened.area, closed.area - shape.area


print("# shapely %s, GEOS %s" % (shapely.__version__, ".".join(str(n) for n in geos.geos_version)))
shapes = [("star-%d" % s, star(s, 9 + s, 12, 40)) for s in range(1, 6)]
shapes += [("comb-%d" % s, comb(s, 6)) for s in range(1, 6)]
shapes += [("plate-%d" % s, plate(s)) for s in range(1, 4)]
for name, shape in shapes:
    assert shape.is_valid and shape.geom_type == "Polygon", name
    for diameter in (1.5875, 3.175, 6.35, 12.7):
        inside, outside = left(shape, diameter / 2)
        print("%s;%s;%.6f;%.6f;%s" % (name, diameter, inside, outside, shape.wkt))
