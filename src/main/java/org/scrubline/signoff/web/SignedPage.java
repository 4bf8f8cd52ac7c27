package org.scrubline.signoff.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The page of a signed record.
 *
 * @param href its own path
 * @param nav key of the entry it stands under for this reader
 * @param note what stands beside the signature, such as late; null when nothing does
 * @param credential what the signer was recognised by, in words; null when that was not asked
 * @param version of the sheet, 1 for the first
 * @param hash of the whole record
 * @param reviewedHash of what the signer read
 * @param mayRemark whether the reader is the trainee
 */
record SignedPage(
        String href,
        String nav,
        RecordPage record,
        Signature signature,
        @Nullable String note,
        @Nullable String credential,
        int version,
        String hash,
        String reviewedHash,
        List<RemarkView> remarks,
        boolean mayRemark) {

    /** Who signed, in which role, when with zone, with what meaning. */
    record Signature(String name, String role, String at, String meaning) {}

    /** A remark with its author and time. */
    record RemarkView(String author, String at, List<String> paragraphs) {}
}
