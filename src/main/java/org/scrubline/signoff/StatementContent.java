package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Signer;

/**
 * Everything a signed statement about a record says. The hash of its canonical JSON (RFC 8785) stands beside it.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param kind what the statement does
 * @param record the version it is about, by its hash
 * @param answers the statement it answers, by its hash; null when it answers none
 * @param person the reviewer or delegate it names; null when it names nobody
 * @param ground why a record should be void; null unless that is asked for
 * @param steps codes of the steps a contest is about; empty when it is about the whole sheet
 * @param text in the signer's own words, may be empty where no reason is asked for
 * @param signedZone zone of the site's clocks
 * @param credential what the signer was recognised by; null in statements of version 1 of this form
 */
public record StatementContent(
        String schema,
        RecordEvent kind,
        Named organisation,
        UUID sheet,
        RecordReference record,
        @Nullable Answered answers,
        @Nullable Named person,
        @Nullable VoidGround ground,
        List<String> steps,
        String text,
        Signer signer,
        Instant signedAt,
        ZoneId signedZone,
        @Nullable CredentialUsed credential) {

    /** Name and version of this form; a change of its members is another version. */
    public static final String SCHEMA = "scrubline-statement/2";

    /** A signed version of a sheet, and the hash of its content. */
    public record RecordReference(UUID id, int version, String contentHash) {}

    /** Another statement, and the hash of its content. */
    public record Answered(UUID id, String contentHash) {}

    public StatementContent {
        steps = List.copyOf(steps);
    }

    static StatementContent read(String json) {
        return CanonicalJson.read(json, StatementContent.class);
    }
}
