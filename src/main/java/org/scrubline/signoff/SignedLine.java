package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.scrubline.casework.Verdict;

/**
 * A signed sheet in a list.
 *
 * @param procedure title of the rubric
 * @param reference reference of the case
 * @param signerRole name of the role then
 * @param meaning message key of the meaning of the signature
 * @param zone zone of the site's clocks
 */
public record SignedLine(
        UUID id,
        int versionNo,
        String procedure,
        String reference,
        String traineeName,
        String signerName,
        String signerRole,
        String meaning,
        Instant caseEndedAt,
        Instant signedAt,
        ZoneId zone,
        Verdict verdict,
        boolean late,
        RecordMarks marks) {}
