package org.scrubline.cohort;

import java.util.List;
import java.util.Optional;
import org.scrubline.cohort.signal.ScorerFigures;
import org.scrubline.cohort.signal.Signal;

/**
 * One supervisor's own way of scoring.
 *
 * @param own empty while nothing of theirs counts
 * @param colleagues those with enough to be shown, without the supervisor and without their names
 * @param signals about this supervisor alone
 */
public record OwnScoring(
        SignalReport report, Optional<ScorerFigures> own, List<ScorerFigures> colleagues, List<Signal> signals) {

    public OwnScoring {
        colleagues = List.copyOf(colleagues);
        signals = List.copyOf(signals);
    }
}
