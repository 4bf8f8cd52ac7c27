package org.scrubline.casework.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Cases;
import org.scrubline.people.People;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.RubricLibrary;
import org.springframework.stereotype.Component;

/**
 * What the band of a case means for this trainee. The first cases of a procedure are meant for the bands A and B: a
 * default of this project, said quietly and never a refusal.
 */
@Component
class CaseBand {

    private static final int FIRST_CASES = 10;

    private final Cases cases;
    private final People people;
    private final RubricLibrary library;
    private final CaseWords words;

    CaseBand(Cases cases, People people, RubricLibrary library, CaseWords words) {
        this.cases = cases;
        this.people = people;
        this.library = library;
        this.words = words;
    }

    /** The band of the factors ticked, with the note about first cases where it applies. */
    String sentence(SignedIn who, Typed typed) {
        List<String> known = library.complexity().factors().stream()
                .map(ComplexityFactor::code)
                .filter(typed.all("factors")::contains)
                .toList();
        UUID trainee = typed.id("trainee").orElse(who.personId());
        return sentence(library.complexity().band(known), trainee, typed.text("procedure"), 0);
    }

    /** The same for a case already logged, which does not count among those before it. */
    String sentence(Band band, UUID trainee, String procedure, int counted) {
        String plain = words.say("case.band.is", band);
        boolean hard = band.compareTo(Band.B) > 0;
        return hard && before(trainee, procedure) - counted < FIRST_CASES
                ? words.say("case.band.early", plain, FIRST_CASES)
                : plain;
    }

    private int before(UUID trainee, String procedure) {
        return cases.operated(trainee, procedure) + people.priorExperience(trainee, procedure);
    }
}
