package org.scrubline.signoff;

import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a device needs to have a sheet signed without a network.
 *
 * @param statement the members of what is signed that scoring does not change
 * @param possible whether this person may sign this sheet so: a first version, the statement of what a signature means accepted
 * @param signed the record the sheet has become; null while it is open
 */
public record TableSigning(
        Map<String, Object> statement,
        boolean possible,
        @Nullable Signed signed) {

    /** A record, and the hash its signer's credential confirmed. */
    public record Signed(UUID record, String hash) {
        static Signed of(SignedSheet sheet) {
            return new Signed(sheet.id(), TableStatement.signedHash(SignedContent.read(sheet.content())));
        }
    }
}
