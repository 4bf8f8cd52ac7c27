package org.scrubline.cohort;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TraineeCase;

/**
 * What a trainee's own list says beyond the signed sheets: cases not signed yet.
 *
 * @param cases those of one programme and procedure that have ended
 */
record OpenWork(List<TraineeCase> cases) {

    static OpenWork of(List<TraineeCase> all, UUID programmeId, String procedure) {
        return new OpenWork(all.stream()
                .filter(one -> one.surgicalCase().programmeId().equals(programmeId))
                .filter(one -> performed(one.surgicalCase()).equals(procedure))
                .filter(one -> one.surgicalCase().endedAt() != null)
                .filter(one -> !one.isVoid())
                .toList());
    }

    private static String performed(SurgicalCase one) {
        String converted = one.convertedTo();
        return converted == null ? one.procedureCode() : converted;
    }

    /** Ends of the cases with a sheet nobody signed, one entry a sheet; a removed sheet stays a case never scored. */
    List<Instant> unsigned() {
        return cases.stream()
                .flatMap(one -> one.sheets().stream()
                        .filter(sheet -> sheet.state() == SheetState.OPEN || sheet.state() == SheetState.REMOVED)
                        .map(sheet -> Objects.requireNonNull(one.surgicalCase().endedAt())))
                .toList();
    }

    /** The later of the last signed case and the last case logged as operator. */
    Optional<Instant> lastCase(Optional<Instant> lastSigned) {
        Stream<Instant> logged = cases.stream()
                .filter(one -> one.claimedPart() != Part.ASSISTED)
                .map(one -> Objects.requireNonNull(one.surgicalCase().endedAt()));
        return Stream.concat(logged, lastSigned.stream()).max(Instant::compareTo);
    }
}
