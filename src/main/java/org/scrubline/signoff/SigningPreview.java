package org.scrubline.signoff;

import java.util.List;
import org.scrubline.casework.CaseVerdict;
import org.scrubline.casework.Sheet;
import org.scrubline.platform.Refusal;

/**
 * What signing would sign.
 *
 * @param content canonical JSON, without the instant of signing
 * @param contentHash its SHA-256; the signer signs this
 * @param obstacles why it cannot be signed now; empty when it can
 * @param blankSteps how many steps nothing was said about
 */
public record SigningPreview(
        Sheet sheet, CaseVerdict verdict, String content, String contentHash, List<Refusal> obstacles, int blankSteps) {

    public SigningPreview {
        obstacles = List.copyOf(obstacles);
    }
}
