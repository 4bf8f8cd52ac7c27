package org.scrubline.cohort.signal;

import java.util.List;

/**
 * Something worth a look. A prompt with its reason, never a statement about a person.
 *
 * @param about id of the trainee or supervisor
 * @param procedure code of the procedure it concerns; empty when it concerns all
 * @param steps codes of the steps it concerns; mostly none
 * @param figures what the sentence prints, in its order
 * @param forms ids of the signed sheets it rests on, oldest case first
 */
public record Signal(
        Kind kind, String about, String procedure, List<String> steps, List<Double> figures, List<String> forms) {

    /** What can be noticed; limits and rates of false alarms are in {@code docs/model.md}. */
    public enum Kind {
        /** The level has hardly risen over the last third and lies below what the standard asks. */
        PLATEAU(6, 260),
        /** The level lies below where it was, and no break explains it. */
        REGRESSION(4, 280),
        /** A long time without a case, with what the level did since. */
        BREAK,
        /** Steps that stay behind the trainee's other steps. */
        STEPS_BEHIND(4, 200),
        /** Fewer cases a month than the others of the programme. */
        FEW_CASES(0, 240),
        /** Most sheets about the trainee come late. */
        SCORED_LATE,
        /** Many sheets about the trainee were never signed. */
        UNSCORED,
        /** In no procedure is there enough for a proposal. */
        INSUFFICIENT,
        /** The evidence supports the highest standard. */
        SUPPORTED,
        SCORES_LOWER(0, 120),
        SCORES_HIGHER(4, 120),
        /** Nearly all levels lie on two neighbours of the scale. */
        NARROW_RANGE(0, 140),
        /** Many sheets give every step the same level. */
        ONE_LEVEL,
        /** Most sheets are signed late. */
        SIGNS_LATE;

        private final int falseAlarms;
        private final int without;

        /** What is counted and not concluded. */
        Kind() {
            this(0, 0);
        }

        /** As measured by {@code PlantedSignalsSoak}, which holds the figures to this. */
        Kind(int falseAlarms, int without) {
            this.falseAlarms = falseAlarms;
            this.without = without;
        }

        /** How often the rule spoke, in twenty invented programmes, about somebody with nothing of the kind planned. */
        public int falseAlarms() {
            return falseAlarms;
        }

        /** How many such people there were; 0 where the signal is a count or the engine's own answer. */
        public int without() {
            return without;
        }
    }

    public Signal {
        steps = List.copyOf(steps);
        figures = List.copyOf(figures);
        forms = List.copyOf(forms);
    }

    static Signal of(Kind kind, String about, List<Double> figures, List<SignedForm> forms) {
        return new Signal(kind, about, "", List.of(), figures, ids(forms));
    }

    static List<String> ids(List<SignedForm> forms) {
        return forms.stream().map(SignedForm::id).toList();
    }
}
