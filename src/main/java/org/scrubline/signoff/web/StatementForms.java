package org.scrubline.signoff.web;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Wording.FormError;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.VoidGround;
import org.scrubline.signoff.web.StatementForm.Act;
import org.scrubline.signoff.web.StatementForm.Back;
import org.scrubline.signoff.web.StatementForm.Choice;
import org.scrubline.signoff.web.StatementForm.Option;
import org.scrubline.signoff.web.StatementForm.Reason;
import org.scrubline.signoff.web.StatementForm.Select;
import org.scrubline.signoff.web.StatementForm.Signed;
import org.scrubline.signoff.web.StatementForm.Steps;
import org.springframework.stereotype.Component;

/** Makes the forms by which something is said about a record. */
@Component
class StatementForms {

    private final RecordWords words;
    private final Rubrics rubrics;

    StatementForms(RecordWords words, Rubrics rubrics) {
        this.words = words;
        this.rubrics = rubrics;
    }

    /** What a form is for: the record, where it is sent, what was typed and what was wrong with it. */
    record Ask(SignedSheet about, String action, Back back, TypedStatement typed, List<Refusal> reasons) {}

    StatementForm newVersion(Ask ask) {
        return form(
                "new-version",
                ask,
                null,
                null,
                true,
                List.of(new Act("", words.say("signoff.new-version.open"), null)));
    }

    StatementForm delegate(Ask ask, List<Person> people) {
        return signed(
                "delegate",
                ask,
                new Select("delegate", words.say("signoff.delegate.who"), options(people)),
                null,
                true,
                RecordEvent.DELEGATE_NAMED);
    }

    StatementForm askVoid(Ask ask) {
        List<Option> grounds = Stream.of(VoidGround.values())
                .map(ground -> new Option(ground.name(), words.say("signoff.ground." + ground.name())))
                .toList();
        Select ground = new Select("ground", words.say("signoff.void.ground"), grounds);
        return signed("void", ask, ground, null, true, RecordEvent.VOID_ASKED);
    }

    StatementForm decideVoid(Ask ask) {
        return signed("void-decision", ask, null, null, false, RecordEvent.VOID_CONFIRMED, RecordEvent.VOID_DECLINED);
    }

    StatementForm contest(Ask ask) {
        List<Choice> steps = rubrics.byId(ask.about().rubricVersionId()).orElseThrow().rubric().steps().stream()
                .map(step -> new Choice(step.code(), step.name(), null))
                .toList();
        return signed(
                "contest", ask, null, new Steps(steps, ask.typed().all("steps")), true, RecordEvent.CONTEST_OPENED);
    }

    StatementForm reply(Ask ask) {
        return signed("reply", ask, null, null, true, RecordEvent.CONTEST_REPLIED);
    }

    StatementForm reviewer(Ask ask, List<Person> people) {
        return signed(
                "reviewer",
                ask,
                new Select("reviewer", words.say("signoff.reviewer.who"), options(people)),
                null,
                false,
                RecordEvent.REVIEWER_NAMED);
    }

    StatementForm decision(Ask ask) {
        return signed("decision", ask, null, null, true, RecordEvent.CONTEST_UPHELD, RecordEvent.CONTEST_NOT_UPHELD);
    }

    StatementForm end(Ask ask) {
        return signed("end", ask, null, null, false, RecordEvent.CONTEST_WITHDRAWN);
    }

    private static List<Option> options(List<Person> people) {
        return people.stream()
                .map(person -> new Option(person.id().toString(), person.printedName()))
                .toList();
    }

    private StatementForm signed(
            String name,
            Ask ask,
            @Nullable Select select,
            @Nullable Steps steps,
            boolean reasonNeeded,
            RecordEvent... events) {
        List<Act> acts = Stream.of(events)
                .map(event -> new Act(
                        event.name(),
                        words.say("signoff.act." + event.name()),
                        words.say("signoff.meaning." + event.name())))
                .toList();
        return form(name, ask, select, steps, reasonNeeded, acts);
    }

    private StatementForm form(
            String name,
            Ask ask,
            @Nullable Select select,
            @Nullable Steps steps,
            boolean reasonNeeded,
            List<Act> acts) {
        SheetContent content = SignedContent.read(ask.about().content()).reviewed();
        return new StatementForm(
                words.say("signoff.form." + name + ".title"),
                name.equals("new-version") ? "to-score" : "contests",
                words.say(
                        "signoff.form.about",
                        content.trainee().name(),
                        content.rubric().title(),
                        content.operation().reference(),
                        ask.about().versionNo(),
                        ask.about().signerName()),
                words.say("signoff.form." + name + ".lede"),
                null,
                ask.action(),
                ask.back(),
                select,
                steps,
                new Reason(
                        words.say("signoff.form." + name + ".reason"),
                        words.say(reasonNeeded ? "signoff.form.reason.hint" : "signoff.form.remark.hint"),
                        reasonNeeded),
                acts.get(0).meaning() == null
                        ? null
                        : new Signed(ask.about().id(), ask.about().contentHash(), null),
                acts,
                new FormView(ask.typed().shown(), errors(ask.reasons())));
    }

    /** What concerns the form as a whole leads to its beginning. */
    private List<FormError> errors(List<Refusal> reasons) {
        return CredentialPlace.of(reasons).stream()
                .map(reason ->
                        new FormError(reason.field().isEmpty() ? "statement" : reason.field(), words.say(reason)))
                .toList();
    }
}
