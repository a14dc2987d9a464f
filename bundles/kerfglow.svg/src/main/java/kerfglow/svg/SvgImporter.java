// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import kerfglow.geometry.FillRuleLimitException;
import org.locationtech.jts.geom.Envelope;
import org.osgi.service.component.annotations.Component;

/**
 * Reads static SVG 1.1 and 2 as a proof at real size. What is read, what is only reported and which limits hold stands in
 * {@code docs/import.md}. Keeps nothing between calls but which fonts there are.
 */
@Component
public final class SvgImporter implements ProofImporter {
    private final Limits limits;
    private final FirstText firstText = new FirstText();
    private Fonts fonts;

    /** The importer with the limits that {@code docs/import.md} lists. */
    public SvgImporter() {
        this(Limits.standard());
    }

    SvgImporter(Limits limits) {
        this.limits = limits;
    }

    @Override
    public Proof read(Path file, ImportOptions options) throws ProofException {
        byte[] bytes = HardenedReader.bytes(file, limits);
        byte[] contents = HardenedReader.unpacked(bytes, limits);
        SvgSource source = HardenedReader.parse(contents, limits);
        long drawn = UseCount.check(source, limits);
        firstText.expect(contents, this::fonts); // not for a file that is refused
        try {
            return drawn(file.toString(), sha256(bytes), Drawing.of(source, options, limits, this::fonts), drawn);
        } catch (LimitException | FillRuleLimitException e) {
            throw new ProofException(e.getMessage(), 0, 0, e);
        }
    }

    /** Only when there is text: looking for installed fonts takes longer than a small import. */
    private synchronized Fonts fonts() {
        if (fonts == null) {
            fonts = new Fonts();
        }
        return fonts;
    }

    private static Proof drawn(String file, String digest, Drawing drawing, long expected) throws ProofException {
        Survey.of(drawing.source(), drawing.report());
        RootSize size = RootSize.of(drawing);
        Place root = new Place(size.toMm(), drawing.cascade().initial(), size.lengths(), Clip.NONE, Set.of(), true, false, "", "",
                List.of(), 0);
        List<Element> elements = new Walker(drawing, expected).walk(root, size.fit());
        double widthMm = size.widthMm();
        double heightMm = size.heightMm();
        Envelope content = contentOf(elements);
        if (size.fitsContent() && content.getMaxX() > 0 && content.getMaxY() > 0) {
            widthMm = content.getMaxX();
            heightMm = content.getMaxY();
        }
        drawing.options().progress().accept(1);
        return new Proof(file, digest, widthMm, heightMm, drawing.options().scale(), drawing.options().chordErrorMm(), elements,
                drawing.report().all());
    }

    private static Envelope contentOf(List<Element> elements) {
        Envelope content = new Envelope();
        for (Element element : elements) {
            content.expandToInclude(element.fillArea().getEnvelopeInternal());
            content.expandToInclude(element.strokeArea().getEnvelopeInternal());
            for (Outline outline : element.outlines()) {
                content.expandToInclude(outline.path().getEnvelopeInternal());
            }
        }
        return content;
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
