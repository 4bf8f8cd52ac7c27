package org.scrubline.people;

import java.util.List;

/**
 * What a trainee may say about themselves for the tables on equality, and the answers to choose from. Few and coarse, so
 * that groups have a chance of being large enough to show (common practice, no source).
 */
public enum Characteristic {
    GENDER("WOMAN", "MAN", "ANOTHER"),
    /** At the end of the first year in the programme. */
    AGE("UNDER_30", "FROM_30", "FROM_35"),
    /** Where the person became a doctor. */
    QUALIFIED("HERE", "ELSEWHERE");

    @SuppressWarnings("ImmutableEnumChecker") // a copy nobody can change
    private final List<String> answers;

    Characteristic(String... answers) {
        this.answers = List.of(answers);
    }

    /** What can be said, in the order of lists; nothing said is none of them. */
    public List<String> answers() {
        return answers;
    }
}
