package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;

/**
 * What somebody signed about a signed version: countersigned it or could not, have read it or do not acknowledge it. It
 * stays with its version and touches no score.
 *
 * @param record the signed version
 * @param event COUNTERSIGNED, COUNTERSIGN_REFUSED, ACKNOWLEDGED or NOT_ACKNOWLEDGED
 * @param content canonical JSON (RFC 8785) of exactly what was signed
 * @param contentHash SHA-256 of {@code content}, lower-case hexadecimal
 * @param recordHash content hash of the signed version
 * @param meaning message key of the meaning of the signature
 * @param words comment or reason; empty when there is none
 */
public record VersionSignature(
        UUID id,
        UUID record,
        RecordEvent event,
        String content,
        String contentHash,
        String recordHash,
        UUID signerId,
        String signerName,
        String signerRole,
        String meaning,
        String words,
        Instant signedAt,
        ZoneId signedZone) {}
