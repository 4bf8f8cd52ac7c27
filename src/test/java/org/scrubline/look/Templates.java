package org.scrubline.look;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The templates as written, parsed as XML. They are well-formed so that the same ones can be printed to PDF. */
final class Templates {

    private static final Path ROOT = Path.of("src/main/resources/templates");

    private Templates() {}

    /** A template's path under the root, its text, and its tree. */
    record Template(String path, String text, Document tree) {}

    /** Every template of the product. */
    static List<Template> all() {
        try (Stream<Path> files = Files.walk(ROOT)) {
            return files.filter(file -> file.toString().endsWith(".html"))
                    .sorted()
                    .map(Templates::read)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Template read(Path file) {
        try {
            return parse(ROOT.relativize(file).toString().replace('\\', '/'), Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The template in this text. */
    static Template parse(String path, String text) {
        String body = text.replace("<!DOCTYPE html>", "").strip();
        try {
            DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
            builder.setErrorHandler(null);
            return new Template(
                    path, text, builder.parse(new InputSource(new StringReader("<all>" + body + "</all>"))));
        } catch (SAXException e) {
            throw new AssertionError(path + " is not well-formed: " + e.getMessage(), e);
        } catch (IOException | ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }
}
