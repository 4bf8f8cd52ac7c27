package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;

/** A printed file that holds hostile text, read by a library of others: it is text, and nothing in the file runs or leads away. */
final class HostilePaper {

    /** Keys under which a file keeps what runs or leads away (ISO 32000-1, 12.6). */
    private static final List<COSName> ACTING = List.of(
            COSName.JS,
            COSName.JAVA_SCRIPT,
            COSName.URI,
            COSName.AA,
            COSName.OPEN_ACTION,
            COSName.getPDFName("Launch"),
            COSName.getPDFName("XFA"));

    /** Kinds of actions (ISO 32000-1, table 198). */
    private static final Set<String> ACTIONS = Set.of(
            "JavaScript",
            "URI",
            "Launch",
            "GoToR",
            "GoToE",
            "SubmitForm",
            "ImportData",
            "Rendition",
            "Named",
            "Thread");

    private HostilePaper() {}

    static void shows(byte[] pdf, List<String> texts) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String shown = squeezed(new PDFTextStripper().getText(document));
            assertThat(texts).allSatisfy(text -> assertThat(shown).contains(squeezed(text)));
            for (PDPage page : document.getPages()) {
                assertThat(page.getAnnotations()).isEmpty();
            }
            nothingActs(document.getDocument().getTrailer(), Collections.newSetFromMap(new IdentityHashMap<>()));
            describesItselfInXml(document);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Lines of a printed page break anywhere. */
    private static String squeezed(String text) {
        return text.replaceAll("\\s+", "");
    }

    private static void nothingActs(COSBase held, Set<COSBase> seen) {
        COSBase value = held instanceof COSObject reference ? reference.getObject() : held;
        if (value == null || !seen.add(value)) {
            return;
        }
        if (value instanceof COSArray array) {
            array.forEach(member -> nothingActs(member, seen));
        } else if (value instanceof COSDictionary dictionary) {
            assertThat(dictionary.keySet()).doesNotContainAnyElementsOf(ACTING);
            assertThat(ACTIONS).doesNotContain(String.valueOf(dictionary.getNameAsString(COSName.S)));
            dictionary.getValues().forEach(member -> nothingActs(member, seen));
        }
    }

    /** A name in the title of a file ends up in its description too. */
    private static void describesItselfInXml(PDDocument document) {
        try (InputStream description =
                document.getDocumentCatalog().getMetadata().exportXMPMetadata()) {
            String root = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(description.readAllBytes()))
                    .getDocumentElement()
                    .getNodeName();
            assertThat(root).isEqualTo("x:xmpmeta");
        } catch (Exception e) {
            throw new AssertionError("the description of the file cannot be read", e);
        }
    }
}
