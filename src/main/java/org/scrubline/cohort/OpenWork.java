package org.scrubline.cohort;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.scrubline.casework.EndedCase;
import org.scrubline.casework.Part;

/**
 * What a trainee's own list says beyond the signed sheets: cases not signed yet.
 *
 * @param cases those of one trainee, programme and procedure that have ended
 */
record OpenWork(List<EndedCase> cases) {

    /** Ends of the cases with a sheet nobody signed, one entry a sheet; a removed sheet stays a case never scored. */
    List<Instant> unsigned() {
        return cases.stream()
                .flatMap(one -> Collections.nCopies(one.waiting(), one.endedAt()).stream())
                .toList();
    }

    /** The later of the last signed case and the last case logged as operator. */
    Optional<Instant> lastCase(Optional<Instant> lastSigned) {
        Stream<Instant> logged =
                cases.stream().filter(one -> one.claimedPart() != Part.ASSISTED).map(EndedCase::endedAt);
        return Stream.concat(logged, lastSigned.stream()).max(Instant::compareTo);
    }
}
