// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import kerfglow.api.Severity;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.ReviewedResult;

/**
 * Results as JUnit XML, so that a build server shows them: a suite for each check of each proof, a case for each finding. What makes the exit status 1 is a
 * failure, so that both agree; a waived finding and a check that could not measure are skipped; a check that failed or timed out is an error.
 * The elements are those that Jenkins' xUnit plugin reads (its junit-10.xsd); {@code junit.xsd} beside this class says what is written.
 */
public final class JunitView {
    private static final double MILLIS = 1000;

    private final XMLStreamWriter xml;
    private final Severity threshold;

    private JunitView(XMLStreamWriter xml, Severity threshold) {
        this.xml = xml;
        this.threshold = threshold;
    }

    /** How a case ended. */
    private enum Ending { PASSED, FAILURE, ERROR, SKIPPED }

    /** One case. */
    private record Case(String name, Ending ending, String message, String type, String text) {
    }

    /**
     * Writes the document; the writer stays open.
     *
     * @param threshold least severity that is a failure
     */
    public static void write(List<ReviewedResult> results, List<JsonView.Unusable> unusable, Severity threshold, Writer out) {
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out);
            new JunitView(xml, threshold).document(results, unusable);
            xml.flush();
            out.write('\n');
            out.flush();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        } catch (XMLStreamException broken) {
            throw new UncheckedIOException(new IOException(broken));
        }
    }

    private void document(List<ReviewedResult> results, List<JsonView.Unusable> unusable) throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        line();
        xml.writeStartElement("testsuites");
        xml.writeAttribute("name", "Kerfglow");
        for (ReviewedResult result : results) {
            for (Result.CheckRow row : result.result().checks()) {
                suite(result.result().proof().file() + " " + row.check(), row.check(), row.millis(), cases(result, row));
            }
        }
        for (JsonView.Unusable each : unusable) {
            suite(each.file(), "input", 0, List.of(new Case("can be read", Ending.ERROR, each.error(), "input", each.error())));
        }
        line();
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private List<Case> cases(ReviewedResult reviewed, Result.CheckRow row) {
        List<Case> cases = new ArrayList<>();
        for (Result.ReportedFinding finding : reviewed.result().findings()) {
            if (finding.rule().id().startsWith(row.check() + ".")) {
                cases.add(found(reviewed, finding));
            }
        }
        if (ReviewedResult.isBroken(row)) {
            String why = row.status().word() + (row.why().isEmpty() ? "" : ": " + row.why());
            cases.add(reviewed.waiver(row).map(waiver -> new Case("finished", Ending.SKIPPED, "accepted by " + waiver.author() + ": " + waiver.reason(), "", why))
                    .orElse(new Case("finished", Ending.ERROR, why, row.status().word(), why)));
        } else if (!row.why().isEmpty()) {
            cases.add(new Case("could measure", Ending.SKIPPED, row.why(), "", row.why()));
        } else if (cases.isEmpty()) {
            cases.add(new Case("nothing found", Ending.PASSED, "", "", ""));
        }
        return cases;
    }

    private Case found(ReviewedResult reviewed, Result.ReportedFinding finding) {
        String text = text(finding, reviewed.result());
        String name = finding.rule().id() + " " + finding.id();
        Decision decision = reviewed.decision(finding);
        if (decision.isWaived()) {
            return new Case(name, Ending.SKIPPED, "waived" + decision.waiver().map(waiver -> " by " + waiver.author() + ": " + waiver.reason()).orElse(""), "", text);
        }
        boolean fails = finding.severity().compareTo(threshold) >= 0;
        return new Case(name, fails ? Ending.FAILURE : Ending.PASSED, finding.message(), finding.severity().word(), text);
    }

    private static String text(Result.ReportedFinding finding, Result result) {
        String measures = finding.measured().isPresent() || finding.required().isPresent() ? "found: " + FindingText.measures(finding, result.units()) + "\n" : "";
        return finding.message() + "\nwhere: " + FindingText.where(finding, result.units()) + "\n" + measures + "why: " + finding.rule().why() + "\ndo: " + finding.fix()
                + "\nsource: " + finding.rule().source();
    }

    private void suite(String name, String check, long millis, List<Case> cases) throws XMLStreamException {
        line();
        xml.writeStartElement("testsuite");
        xml.writeAttribute("name", PlainText.of(name));
        xml.writeAttribute("tests", Integer.toString(cases.size()));
        for (Ending ending : List.of(Ending.FAILURE, Ending.ERROR, Ending.SKIPPED)) {
            long count = cases.stream().filter(each -> each.ending == ending).count();
            xml.writeAttribute(ending == Ending.SKIPPED ? "skipped" : ending.name().toLowerCase(Locale.ROOT) + "s", Long.toString(count));
        }
        xml.writeAttribute("time", String.format(Locale.ROOT, "%.3f", millis / MILLIS));
        for (Case each : cases) {
            one(check, each);
        }
        line();
        xml.writeEndElement();
    }

    private void one(String check, Case each) throws XMLStreamException {
        line();
        xml.writeStartElement("testcase");
        xml.writeAttribute("classname", check);
        xml.writeAttribute("name", each.name);
        if (each.ending == Ending.PASSED) {
            if (!each.text.isEmpty()) {
                xml.writeStartElement("system-out");
                xml.writeCharacters(PlainText.of(each.text));
                xml.writeEndElement();
            }
        } else {
            xml.writeStartElement(each.ending.name().toLowerCase(Locale.ROOT));
            if (!each.type.isEmpty()) {
                xml.writeAttribute("type", each.type);
            }
            xml.writeAttribute("message", PlainText.of(each.message));
            xml.writeCharacters(PlainText.of(each.text));
            xml.writeEndElement();
        }
        xml.writeEndElement();
    }

    private void line() throws XMLStreamException {
        xml.writeCharacters("\n");
    }
}
