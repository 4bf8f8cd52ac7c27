package org.scrubline.platform;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.springframework.stereotype.Component;
import org.thymeleaf.context.Context;
import org.thymeleaf.spring6.SpringTemplateEngine;

/**
 * Prints a page as PDF/A-3a that is tagged as PDF/UA asks: the fonts and the colour profile lie inside, and so does the
 * receipt, so that one file both reads and proves.
 */
@Component
public class PagePrint {

    private static final String FONT = "DejaVu Sans";
    private static final int REGULAR = 400;
    private static final int BOLD = 700;

    private final SpringTemplateEngine templates;

    PagePrint(SpringTemplateEngine templates) {
        this.templates = templates;
    }

    /**
     * The document. Drawings in the page are drawn; they must hold no text, which would need fonts of their own.
     *
     * @param template well-formed XHTML; the style is put in here, and nothing is loaded from anywhere
     * @param receipt attached under this name
     */
    public byte[] pdf(String template, Map<String, Object> model, Locale locale, String name, String receipt) {
        String page = templates.process(template, new Context(locale, model));
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfAConformance(PdfAConformance.PDFA_3_A);
        builder.usePdfUaAccessibility(true);
        builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
        builder.useFont(() -> font("DejaVuSans.ttf"), FONT, REGULAR, FontStyle.NORMAL, true);
        builder.useFont(() -> font("DejaVuSans-Bold.ttf"), FONT, BOLD, FontStyle.NORMAL, true);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> null);
        builder.withHtmlContent(page.replace("</head>", "<style>" + style() + "</style></head>"), null);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            attach(document, name, receipt.getBytes(StandardCharsets.UTF_8));
            document.save(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static InputStream font(String file) {
        return resource("/fonts/" + file);
    }

    private static String style() {
        try (InputStream style = resource("/print/record.css")) {
            return new String(style.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream resource(String path) {
        return Objects.requireNonNull(PagePrint.class.getResourceAsStream(path), path);
    }

    /** As ISO 19005-3 asks: named in the catalogue, with its type and how it relates to the document. */
    private static void attach(PDDocument document, String name, byte[] bytes) throws IOException {
        PDEmbeddedFile file = new PDEmbeddedFile(document, new ByteArrayInputStream(bytes));
        file.setSubtype("application/json");
        file.setSize(bytes.length);
        PDComplexFileSpecification specification = new PDComplexFileSpecification();
        specification.setFile(name);
        specification.setFileUnicode(name);
        specification.setEmbeddedFile(file);
        specification.setEmbeddedFileUnicode(file);
        specification.getCOSObject().setName(COSName.getPDFName("AFRelationship"), "Source");
        PDEmbeddedFilesNameTreeNode files = new PDEmbeddedFilesNameTreeNode();
        files.setNames(Map.of(name, specification));
        PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
        names.setEmbeddedFiles(files);
        document.getDocumentCatalog().setNames(names);
        COSArray associated = new COSArray();
        List.of(specification).forEach(associated::add);
        document.getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("AF"), associated);
    }
}
