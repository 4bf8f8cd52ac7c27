package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
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
        return before(trainee, procedure) - counted < FIRST_CASES ? early(band) : plain(band);
    }

    /** The same for a device, which adds up the points itself. */
    CaseLogPackage.Bands forDevice(UUID trainee, Collection<String> procedures) {
        return new CaseLogPackage.Bands(
                library.complexity().factors().stream()
                        .collect(Collectors.toMap(ComplexityFactor::code, ComplexityFactor::technicalPoints)),
                byPoints(this::plain),
                byPoints(this::early),
                procedures.stream()
                        .filter(procedure -> before(trainee, procedure) < FIRST_CASES)
                        .toList());
    }

    /** A sentence for each number of points, up to the first of the hardest band. */
    private static List<String> byPoints(Function<Band, String> sentence) {
        List<String> sentences = new ArrayList<>();
        Band band;
        do {
            band = Band.ofPoints(sentences.size());
            sentences.add(sentence.apply(band));
        } while (band != Band.D);
        return sentences;
    }

    private String plain(Band band) {
        return words.say("case.band.is", band);
    }

    private String early(Band band) {
        return band.compareTo(Band.B) > 0 ? words.say("case.band.early", plain(band), FIRST_CASES) : plain(band);
    }

    private int before(UUID trainee, String procedure) {
        return cases.operated(trainee, procedure) + people.priorExperience(trainee, procedure);
    }
}
