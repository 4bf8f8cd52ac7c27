package org.scrubline.committee.pack;

import java.util.List;
import java.util.function.Predicate;
import org.scrubline.committee.pack.PackContent.AskLine;
import org.scrubline.committee.pack.PackContent.TrainingLine;
import org.scrubline.training.Exercise;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingKind;

/**
 * What a committee is asked to look for in the training record before E0, E1 and E5. These levels have no gate: the rows
 * show what there is, and the committee decides. One of each is asked for, a default of this project without an outside
 * source.
 *
 * @param entries of the trainee, as known at the cut-off
 * @param introduced whether an introduction of the trainee to scoring was recorded by then
 */
record TrainingChecklist(List<TrainingEntry> entries, boolean introduced) {

    private static final int NEEDS = 1;

    List<TrainingLine> lines() {
        return List.of(
                new TrainingLine(
                        "E0",
                        List.of(
                                row(Ask.INDUCTION, entry -> entry.kind() == TrainingKind.INDUCTION),
                                row(Ask.PRACTICE, TrainingEntry::signedOff))),
                new TrainingLine(
                        "E1",
                        List.of(
                                row(Ask.FLAP_PRACTICE, seen(Exercise.FLAP)),
                                row(Ask.SUTURE_PRACTICE, seen(Exercise.SUTURE)))),
                new TrainingLine(
                        "E5",
                        List.of(new AskLine(Ask.SCORER_TRAINING, introduced ? 1 : 0, NEEDS, introduced, List.of()))));
    }

    private static Predicate<TrainingEntry> seen(Exercise exercise) {
        return entry -> entry.signedOff() && entry.exercise() == exercise;
    }

    private AskLine row(Ask ask, Predicate<TrainingEntry> counts) {
        List<TrainingEntry> counted = entries.stream().filter(counts).toList();
        return new AskLine(
                ask,
                counted.size(),
                NEEDS,
                counted.size() >= NEEDS,
                counted.stream().map(TrainingEntry::id).toList());
    }
}
