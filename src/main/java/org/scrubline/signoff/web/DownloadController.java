package org.scrubline.signoff.web;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Receipt;
import org.scrubline.ledger.Receipts;
import org.scrubline.platform.PagePrint;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** A signed record to take along, by whoever may read it: to prove, and to read and prove. */
@Controller
class DownloadController {

    private final SignedRecords records;
    private final Receipts receipts;
    private final SignedPages pages;
    private final PagePrint print;

    DownloadController(SignedRecords records, Receipts receipts, SignedPages pages, PagePrint print) {
        this.records = records;
        this.receipts = receipts;
        this.pages = pages;
        this.print = print;
    }

    @GetMapping("/signed/{id}/receipt.json")
    @TakesAlong(Size.ONE)
    ResponseEntity<byte[]> receipt(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        SignedSheet signed = records.read(who, id);
        Receipt receipt = receipts.of(LeafKind.SIGNATURE, signed.id());
        return file(
                receiptName(signed), MediaType.APPLICATION_JSON, receipt.json().getBytes(StandardCharsets.UTF_8));
    }

    @GetMapping("/signed/{id}/record.pdf")
    @TakesAlong(Size.ONE)
    ResponseEntity<byte[]> print(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Locale locale) {
        SignedSheet signed = records.read(who, id);
        Receipt receipt = receipts.of(LeafKind.SIGNATURE, signed.id());
        Map<String, Object> model =
                Map.of("page", pages.of(who, signed), "receipt", receipt, "organisation", who.organisationName());
        byte[] pdf = print.pdf("signoff/record-print", model, locale, receiptName(signed), receipt.json());
        return file("record-" + signed.id() + ".pdf", MediaType.APPLICATION_PDF, pdf);
    }

    private static String receiptName(SignedSheet signed) {
        return "receipt-" + signed.id() + ".json";
    }

    private static ResponseEntity<byte[]> file(String name, MediaType type, byte[] bytes) {
        return ResponseEntity.ok()
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .contentType(type)
                .body(bytes);
    }
}
