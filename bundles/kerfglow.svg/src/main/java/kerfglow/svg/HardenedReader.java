// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import kerfglow.api.proof.ProofException;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.XMLReader;

/**
 * Reads the bytes of a file and its XML. Follows no reference out of the file, and ends at the first limit. Every fault of the file
 * ends in one {@link ProofException}.
 */
final class HardenedReader {
    private static final String WRONG_ENCODING = "the characters are not in the encoding that the file declares (UTF-8 when it "
            + "declares none); save it again in UTF-8";
    private static final int GZIP_FIRST = 0x1f;
    private static final int GZIP_SECOND = 0x8b;
    private static final int BYTE = 0xff;
    private static final String SAX = "http://xml.org/sax/features/";
    private static final String XERCES = "http://apache.org/xml/features/";
    private static final String PROPERTIES = "http://xml.org/sax/properties/";
    private static final String JDK = "http://www.oracle.com/xml/jaxp/properties/";

    private HardenedReader() {
    }

    /** The file's bytes as they are on disk. */
    static byte[] bytes(Path file, Limits limits) throws ProofException {
        try {
            if (Files.isDirectory(file)) {
                throw refusal("this is a folder, not a file; choose an SVG file", null);
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw refusal("this is a device or a pipe, not a file; choose an SVG file", null);
            }
            long size = Files.size(file);
            if (size > limits.fileBytes()) {
                throw tooLarge("the file has " + size + " bytes", limits);
            }
            try (InputStream in = Files.newInputStream(file)) {
                byte[] bytes = in.readNBytes((int) limits.fileBytes() + 1);
                if (bytes.length > limits.fileBytes()) {
                    throw tooLarge("the file goes on", limits);
                }
                if (bytes.length == 0) {
                    throw refusal("the file is empty; export the proof again", null);
                }
                return bytes;
            }
        } catch (NoSuchFileException e) {
            throw refusal("there is no such file; check the name", e);
        } catch (AccessDeniedException e) {
            throw refusal("the file may not be read; check its permissions", e);
        } catch (IOException e) {
            throw refusal("the file cannot be read: " + e.getMessage(), e);
        }
    }

    /** The contents, unpacked when the file is packed with gzip (.svgz). */
    static byte[] unpacked(byte[] bytes, Limits limits) throws ProofException {
        if (bytes.length < 2 || (bytes[0] & BYTE) != GZIP_FIRST || (bytes[1] & BYTE) != GZIP_SECOND) {
            return bytes;
        }
        try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
            byte[] contents = in.readNBytes((int) limits.fileBytes() + 1);
            if (contents.length > limits.fileBytes()) {
                throw tooLarge("the packed file unpacks to more", limits);
            }
            return contents;
        } catch (ZipException e) {
            throw refusal("the packed file is damaged: " + e.getMessage() + "; export the proof again", e);
        } catch (IOException e) {
            throw refusal("the packed file ends too early; export the proof again", e);
        }
    }

    static SvgSource parse(byte[] contents, Limits limits) throws ProofException {
        SourceHandler handler = new SourceHandler(limits);
        try {
            XMLReader reader = reader(limits);
            reader.setContentHandler(handler);
            reader.setErrorHandler(handler);
            reader.setEntityResolver(handler);
            reader.setProperty(PROPERTIES + "lexical-handler", handler);
            reader.setProperty(PROPERTIES + "declaration-handler", handler);
            reader.parse(new InputSource(new ByteArrayInputStream(contents)));
            return handler.source();
        } catch (SourceHandler.Refusal e) {
            throw new ProofException(e.getMessage(), handler.line(), handler.column(), e);
        } catch (SAXParseException e) {
            throw new ProofException(sentence(e), e.getLineNumber(), e.getColumnNumber(), e);
        } catch (CharacterCodingException e) {
            throw wrongEncoding(handler, e);
        } catch (IOException e) {
            if (e instanceof java.io.CharConversionException || e instanceof java.io.UnsupportedEncodingException) {
                throw wrongEncoding(handler, e);
            }
            throw new ProofException("the file cannot be read: " + e.getMessage(), handler.line(), handler.column(), e);
        } catch (SAXException | ParserConfigurationException e) {
            throw new ProofException("the file cannot be read as XML: " + e.getMessage(), handler.line(), handler.column(), e);
        }
    }

    private static XMLReader reader(Limits limits) throws ParserConfigurationException, SAXException {
        // The one in the JDK, whatever else is on the class path: its limits are known.
        SAXParserFactory factory = SAXParserFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        factory.setValidating(false);
        factory.setXIncludeAware(false);
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature(SAX + "external-general-entities", false);
        factory.setFeature(SAX + "external-parameter-entities", false);
        factory.setFeature(XERCES + "nonvalidating/load-external-dtd", false);
        XMLReader reader = factory.newSAXParser().getXMLReader();
        reader.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        reader.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
        reader.setProperty(JDK + "entityExpansionLimit", String.valueOf(limits.entities() * limits.entities()));
        return reader;
    }

    private static String sentence(SAXParseException e) {
        String message = e.getMessage();
        if (e.getException() instanceof java.io.CharConversionException || message != null && message.startsWith("Invalid byte")
                || message != null && message.contains("encoding \"")) {
            return WRONG_ENCODING;
        }
        if (message != null && message.contains("JAXP00010001")) {
            return "entities are expanded too often (limit on entities); save the proof without entities";
        }
        if (message != null && message.contains("Premature end of file") || message != null && message.contains("must start and end within")) {
            return "the file ends too early; export the proof again (" + message + ")";
        }
        return "this is not well-formed XML: " + message + " Export the proof again as SVG";
    }

    private static ProofException wrongEncoding(SourceHandler handler, IOException e) {
        return new ProofException(WRONG_ENCODING, handler.line(), handler.column(), e);
    }

    private static ProofException tooLarge(String found, Limits limits) {
        return refusal(found + ", more than " + limits.fileBytes() + " bytes (limit on file size); leave out embedded pictures or "
                + "split the proof", null);
    }

    private static ProofException refusal(String message, Exception cause) {
        return new ProofException(message, 0, 0, cause);
    }
}
