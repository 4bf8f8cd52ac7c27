package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;

/**
 * Everything a signature about a signed version covers.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param record the signed version, its sheet and number, and its content hash
 * @param words comment or reason; empty when there is none
 * @param credential what the signer was recognised by; null in history written without asking and in version 1 of this
 *     form
 */
public record VersionSignatureContent(
        String schema,
        RecordEvent event,
        SignedVersion record,
        String words,
        SheetContent.Signer signer,
        Instant signedAt,
        ZoneId signedZone,
        @Nullable CredentialUsed credential) {

    /** Name and version of this form. */
    public static final String SCHEMA = "scrubline-version-signature/2";

    /** Which version it is about. */
    public record SignedVersion(UUID id, UUID sheet, int version, String contentHash) {}

    /** Reads the content of a signature about a version. */
    public static VersionSignatureContent read(String json) {
        return CanonicalJson.read(json, VersionSignatureContent.class);
    }

    VersionSignature signature() {
        String json = CanonicalJson.of(this);
        return new VersionSignature(
                UUID.randomUUID(),
                record.id(),
                event,
                json,
                CanonicalJson.sha256(json),
                record.contentHash(),
                signer.id(),
                signer.name(),
                signer.role(),
                signer.meaningKey(),
                words,
                signedAt,
                signedZone);
    }
}
