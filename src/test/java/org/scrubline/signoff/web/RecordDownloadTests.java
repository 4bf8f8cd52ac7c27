package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.EvidenceFixture;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.ledger.check.Known;
import org.scrubline.ledger.check.ReceiptFile;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class RecordDownloadTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    SignedRecords records;

    @Autowired
    MockMvc mvc;

    Evidence evidence;
    SignedSheet signed;

    @BeforeEach
    void sign() {
        evidence = fixture.withoutCheckpoint(organisations);
        signed = evidence.signed().get(0);
        evidence.theatre()
                .organisation()
                .in(() -> records.remark(evidence.theatre().trainee(), signed.id(), "The punch slipped: µ ≥ 2 – noted.")
                        .orThrow());
    }

    @Test
    void theRecordPageOffersBothFiles() throws Exception {
        assertThat(new String(body(evidence.theatre().trainee(), ""), StandardCharsets.UTF_8))
                .contains("/signed/" + signed.id() + "/record.pdf", "/signed/" + signed.id() + "/receipt.json");
    }

    @Test
    void theReceiptIsSoundForWhoeverMayReadTheRecord() throws Exception {
        for (SignedIn reader : List.of(
                evidence.theatre().trainee(),
                evidence.theatre().supervisor(),
                evidence.theatre().organisation().join("Ruda Calloway", Role.DIRECTOR))) {
            String json = new String(body(reader, "/receipt.json"), StandardCharsets.UTF_8);
            assertThat(ReceiptFile.check(json, Known.NOTHING, ServiceLoader.load(RecordCheck.class))
                            .sound())
                    .isTrue();
        }
    }

    @Test
    void forOthersThereIsNothingToTakeAlong() throws Exception {
        SignedIn other = evidence.theatre().organisation().join("Bram Tilling", Role.TRAINEE);
        SignedIn administrator = evidence.theatre().organisation().join("Ilse Marrow", Role.ADMINISTRATOR);
        for (SignedIn stranger : List.of(other, administrator)) {
            for (String file : List.of("/record.pdf", "/receipt.json")) {
                mvc.perform(get("/signed/" + signed.id() + file).with(LogIn.as(stranger)))
                        .andExpect(status().isNotFound());
                mvc.perform(get("/signed/" + UUID.randomUUID() + file).with(LogIn.as(stranger)))
                        .andExpect(status().isNotFound());
            }
        }
    }

    @Test
    void thePrintedRecordSaysWhatTheRecordSays() throws Exception {
        byte[] pdf = body(evidence.theatre().trainee(), "/record.pdf");
        Files.write(Path.of("target", "signed-record.pdf"), pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            // 21 CFR 11.50: printed name, time with zone, meaning.
            assertThat(text)
                    .contains("Ansel Verrin", "supervisor", "I observed and scored this case")
                    .containsPattern("\\d{1,2} \\w+ \\d{4}, \\d{2}:\\d{2} (GMT|BST)")
                    .contains("Fenna Hallinor", "version 1.0", "not yet safe")
                    .contains("The punch slipped: µ ≥ 2 – noted.", "for safety", "Took the punch.")
                    .contains("Supports, does not replace, the judgement of licensed supervisors and local policy.")
                    .contains("Personal training record. Not for employment ranking.");
            assertThat(text.replace(" ", "")).contains(signed.contentHash());
            assertThat(signed.steps()).hasSizeGreaterThan(10);
        }
    }

    @Test
    void thePrintedRecordIsAnArchivableTaggedDocumentWithTheReceiptInside() throws Exception {
        try (PDDocument document = Loader.loadPDF(body(evidence.theatre().trainee(), "/record.pdf"))) {
            String metadata =
                    new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
            assertThat(metadata.replaceAll("\\s", ""))
                    .containsPattern("pdfaid:part(>|=\")3")
                    .containsPattern("pdfaid:conformance(>|=\")A")
                    .containsPattern("pdfuaid:part(>|=\")1");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentCatalog().getOutputIntents()).isNotEmpty();
            assertThat(fonts(document)).isNotEmpty().allMatch(PDFont::isEmbedded);
            Map<String, PDComplexFileSpecification> files =
                    document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
            String receipt = new String(
                    files.get("receipt-" + signed.id() + ".json")
                            .getEmbeddedFile()
                            .toByteArray(),
                    StandardCharsets.UTF_8);
            assertThat(ReceiptFile.check(receipt, Known.NOTHING, ServiceLoader.load(RecordCheck.class))
                            .sound())
                    .isTrue();
        }
    }

    private static List<PDFont> fonts(PDDocument document) throws Exception {
        List<PDFont> fonts = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            for (COSName name : page.getResources().getFontNames()) {
                fonts.add(page.getResources().getFont(name));
            }
        }
        return fonts;
    }

    private byte[] body(SignedIn who, String file) throws Exception {
        return mvc.perform(get("/signed/" + signed.id() + file).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }
}
