// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/**
 * The document as it was read.
 *
 * @param root the svg element
 * @param byId elements by id; the first in the file where an id stands twice
 * @param lines where elements stand
 * @param styleSheetReferences references of processing instructions to style sheets outside the file
 */
record SvgSource(Element root, Map<String, Element> byId, SourceLines lines, List<String> styleSheetReferences) {
}
