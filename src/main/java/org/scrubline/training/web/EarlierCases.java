package org.scrubline.training.web;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Reads the form by which a director declares how many cases a trainee operated before joining. */
@Component
class EarlierCases {

    private static final int MOST = 5000;

    private final People people;
    private final Rubrics rubrics;

    EarlierCases(People people, Rubrics rubrics) {
        this.people = people;
        this.rubrics = rubrics;
    }

    /** The number declared, or why not, at the fields {@code procedure} and {@code cases}. */
    Attempt<Integer> declare(UUID trainee, String procedure, String typed) {
        List<Refusal> reasons = new ArrayList<>();
        if (rubrics.published().stream()
                .noneMatch(one -> one.rubric().procedure().equals(procedure))) {
            reasons.add(Refusal.at("procedure", "refusal.training.procedure"));
        }
        int cases = typed.strip().matches("\\d{1,4}") ? Integer.parseInt(typed.strip()) : -1;
        if (cases < 0 || cases > MOST) {
            reasons.add(Refusal.at("cases", "refusal.training.cases"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        people.declarePriorExperience(trainee, procedure, cases);
        return Attempt.done(cases);
    }
}
