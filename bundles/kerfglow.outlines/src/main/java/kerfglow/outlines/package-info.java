// SPDX-License-Identifier: Apache-2.0
/** Outlines for CAD and for machines, made of a result: what is cut, in layers, as SVG and DXF. */
package kerfglow.outlines;
