package org.scrubline.committee.web;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.ActKind;
import org.scrubline.committee.SuspensionGround;
import org.scrubline.people.Person;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SigningStatements;
import org.springframework.stereotype.Component;

/** Makes the forms by which something is signed after a decision. */
@Component
class ActForms {

    private final SigningStatements statements;
    private final CommitteeWords words;

    ActForms(SigningStatements statements, CommitteeWords words) {
        this.statements = statements;
        this.words = words;
    }

    /**
     * What a form is for.
     *
     * @param quote what somebody else said that this answers; null when it answers nothing
     */
    record Ask(
            ActKind kind,
            String about,
            String action,
            String back,
            List<Person> persons,
            @Nullable String quote) {}

    ActForm of(SignedIn who, Ask ask, Typed typed, List<Refusal> reasons) {
        String key = ask.kind().name();
        List<Option> grounds = ask.kind() == ActKind.SUSPENDED
                ? Arrays.stream(SuspensionGround.values())
                        .map(ground -> Option.of(ground, words.say("committee.ground." + ground)))
                        .toList()
                : List.of();
        return new ActForm(
                words.say("committee.next." + key),
                ask.about(),
                words.say("committee.lede." + key),
                ask.action(),
                ask.back(),
                MeetingPages.options(ask.persons()),
                typed.all("persons"),
                grounds,
                ask.kind() != ActKind.PANEL_NAMED && ask.kind() != ActKind.APPEAL_ENDED,
                words.say("committee.meaning." + key),
                words.say("committee.submit"),
                statements.accepted(who.personId()),
                ask.quote(),
                new FormView(typed.shown(), words.errors(reasons)));
    }
}
