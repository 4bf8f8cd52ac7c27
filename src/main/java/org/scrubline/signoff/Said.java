package org.scrubline.signoff;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.signoff.SheetContent.Named;

/** The parts of a statement its signer chooses. */
record Said(
        String text,
        @Nullable Statement answers,
        @Nullable Named person,
        @Nullable VoidGround ground,
        List<String> steps) {

    static Said of(String text) {
        return new Said(text, null, null, null, List.of());
    }

    static Said answering(Statement statement, String text) {
        return new Said(text, statement, null, null, List.of());
    }

    static Said ground(VoidGround ground, String text) {
        return new Said(text, null, null, ground, List.of());
    }

    static Said steps(List<String> steps, String text) {
        return new Said(text, null, null, null, steps);
    }

    /** The same, naming somebody. */
    Said naming(Person named) {
        return new Said(text, answers, new Named(named.id(), named.printedName()), ground, steps);
    }
}
