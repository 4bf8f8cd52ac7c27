package org.scrubline.signoff;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.platform.Recognised;
import org.scrubline.signoff.SheetContent.Named;

/** The parts of a statement its signer chooses, and how they were recognised. */
record Said(
        String text,
        @Nullable Statement answers,
        @Nullable Named person,
        @Nullable VoidGround ground,
        List<String> steps,
        Recognised how) {

    static Said of(Spoken spoken) {
        return new Said(spoken.text(), null, null, null, List.of(), spoken.how());
    }

    static Said answering(Statement statement, Spoken spoken) {
        return new Said(spoken.text(), statement, null, null, List.of(), spoken.how());
    }

    static Said ground(VoidGround ground, Spoken spoken) {
        return new Said(spoken.text(), null, null, ground, List.of(), spoken.how());
    }

    static Said steps(List<String> steps, Spoken spoken) {
        return new Said(spoken.text(), null, null, null, steps, spoken.how());
    }

    /** The same, naming somebody. */
    Said naming(Person named) {
        return new Said(text, answers, new Named(named.id(), named.printedName()), ground, steps, how);
    }
}
