package org.scrubline.casework.reference;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Why a reference case, or what is said about one, cannot be kept as typed. */
@Component
class ReferenceRule {

    /** Longest texts in characters. */
    private static final int TITLE = 120;

    private static final int FILM = 300;

    /** A letter first, so that a number of a hospital does not fit. */
    private static final Pattern REFERENCE = Pattern.compile("[A-Za-z][A-Za-z0-9-]{0,19}");

    private static final Pattern LEVEL = Pattern.compile("[1-5]");

    private final People people;
    private final Clock clock;

    ReferenceRule(People people, Clock clock) {
        this.people = people;
        this.clock = clock;
    }

    /** The day it is in a programme. */
    LocalDate today(Programme programme) {
        return LocalDate.ofInstant(clock.instant(), programme.zone());
    }

    /** Nothing for a reference case that can be kept, as far as it alone can tell. */
    List<Refusal> against(Programme programme, ReferenceDraft draft) {
        List<Refusal> reasons = new ArrayList<>();
        String reference = FreeText.tidy(draft.reference());
        if (!REFERENCE.matcher(reference).matches()) {
            reasons.add(Refusal.at("reference", "refusal.reference.reference"));
        } else {
            FreeText.narrative("reference", reference, TITLE).ifPresent(reasons::add);
        }
        text("title", draft.title(), TITLE).ifPresent(reasons::add);
        if (band(draft).isEmpty()) {
            reasons.add(Refusal.at("band", "refusal.reference.band"));
        }
        text("film", draft.film(), FILM).ifPresent(reasons::add);
        if (TypedDay.of(draft.closesOn())
                .filter(day -> !day.isBefore(today(programme)))
                .isEmpty()) {
            reasons.add(Refusal.at("closesOn", "refusal.reference.day"));
        }
        return reasons;
    }

    private static Optional<Refusal> text(String field, String typed, int longest) {
        String text = FreeText.tidy(typed);
        return text.isEmpty()
                ? Optional.of(Refusal.at(field, "refusal.reference." + field))
                : FreeText.narrative(field, text, longest);
    }

    static Optional<Band> band(ReferenceDraft draft) {
        return Arrays.stream(Band.values())
                .filter(band -> band.name().equals(draft.band()))
                .findFirst();
    }

    /** Nothing for scores that can be kept; every step of the rubric has a level or was not seen. */
    Optional<Refusal> against(SignedIn who, Rubric rubric, Map<String, String> answers) {
        if (people.signatory(who.personId())
                .filter(one -> one.open() && !one.shared())
                .isEmpty()) {
            return Optional.of(Refusal.at("rest", "refusal.reference.shared"));
        }
        for (Map.Entry<String, String> answer : answers.entrySet()) {
            boolean known = rubric.find(answer.getKey()).isPresent();
            boolean said = answer.getValue().equals(ReferenceCases.NOT_SEEN)
                    || LEVEL.matcher(answer.getValue()).matches();
            if (!known || !said) {
                return Optional.of(Refusal.at("rest", "refusal.reference.level"));
            }
        }
        List<Step> blank = rubric.steps().stream()
                .filter(step -> !answers.containsKey(step.code()))
                .toList();
        if (!blank.isEmpty()) {
            Step first = blank.get(0);
            return Optional.of(
                    Refusal.at("step-" + first.code(), "refusal.reference.blank", blank.size(), first.name()));
        }
        return levels(answers).isEmpty()
                ? Optional.of(Refusal.at("rest", "refusal.reference.nothing-seen"))
                : Optional.empty();
    }

    /** The levels among valid answers. */
    static Map<String, Integer> levels(Map<String, String> answers) {
        Map<String, Integer> levels = new LinkedHashMap<>();
        answers.forEach((step, answer) -> {
            if (!answer.equals(ReferenceCases.NOT_SEEN)) {
                levels.put(step, Integer.parseInt(answer));
            }
        });
        return levels;
    }
}
