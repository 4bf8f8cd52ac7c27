package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SigningPreview;

/**
 * The page on which a sheet is read and signed.
 *
 * @param version lock version of the sheet, for the one tap
 * @param untouched steps nothing was said about
 * @param meaning of the signature, in words
 * @param roleKey message key of the signer's role
 * @param reviewed canonical JSON of what is shown, sent back so that a change in between can be shown
 * @param hash its SHA-256
 */
record ReviewPage(
        UUID sheetId,
        int version,
        RecordPage shown,
        List<Obstacle> obstacles,
        int untouched,
        String signer,
        String roleKey,
        String meaning,
        String reviewed,
        String hash) {

    static ReviewPage of(SigningPreview preview, RecordPage shown, List<Obstacle> obstacles) {
        SheetContent.Signer signer = SheetContent.read(preview.content()).signer();
        return new ReviewPage(
                preview.sheet().id(),
                preview.sheet().lockVersion(),
                shown,
                obstacles,
                preview.blankSteps(),
                signer.name(),
                "role." + signer.role(),
                signer.meaning(),
                preview.content(),
                preview.contentHash());
    }
}
