package org.scrubline.outcome;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;

/** Outcomes of a programme, for those who direct it or sit on its committee; {@code NotFound} for others. */
public interface ProgrammeOutcomes {

    /**
     * What is asked for.
     *
     * @param programme null for the first of the person's
     * @param family null for all that are judged by their outcome
     */
    record Wish(@Nullable UUID programme, @Nullable Family family, SuccessSet set) {}

    OutcomeReport read(SignedIn who, Wish wish);

    /**
     * The cases behind the numbers of one trainee, the newest first.
     *
     * @throws org.scrubline.platform.NotFound also for somebody who operated in none of them
     */
    TraineeOutcomeCases cases(SignedIn who, Wish wish, UUID trainee);

    /**
     * Cases of one trainee.
     *
     * @param linked whether the reader may open them
     */
    record TraineeOutcomeCases(OutcomeReport report, String name, boolean linked, List<JudgedCase> cases) {

        public TraineeOutcomeCases {
            cases = List.copyOf(cases);
        }
    }

    /** One case with what the definition says of it. */
    record JudgedCase(FiltrationCase of, CaseOutcome outcome, SuccessSet.Judgement judgement) {}
}
