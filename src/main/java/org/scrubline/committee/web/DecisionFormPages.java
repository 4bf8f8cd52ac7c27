package org.scrubline.committee.web;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scrubline.committee.Ballot;
import org.scrubline.committee.DecisionDraft;
import org.scrubline.committee.Decisions.Preview;
import org.scrubline.committee.Pack;
import org.scrubline.committee.Vote;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.entitlement.EntitlementWords;
import org.scrubline.people.People;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording.FormError;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.SheetContent.Signer;
import org.scrubline.signoff.SigningStatements;
import org.springframework.stereotype.Component;
import org.springframework.util.LinkedMultiValueMap;

/** Makes the pages on which a decision is written and signed. */
@Component
class DecisionFormPages {

    private static final String INSUFFICIENT = "INSUFFICIENT";
    private static final String VOTE = "vote-";
    private static final int REVIEW_MONTHS = 6;

    private final EntitlementWords entitlements;
    private final DecisionWords decisions;
    private final DecisionViews views;
    private final SigningStatements statements;
    private final Passkeys passkeys;
    private final People people;
    private final CommitteeWords words;

    DecisionFormPages(
            EntitlementWords entitlements,
            DecisionWords decisions,
            DecisionViews views,
            SigningStatements statements,
            Passkeys passkeys,
            People people,
            CommitteeWords words) {
        this.entitlements = entitlements;
        this.decisions = decisions;
        this.views = views;
        this.statements = statements;
        this.passkeys = passkeys;
        this.people = people;
        this.words = words;
    }

    /** What was typed, as a draft. */
    static DecisionDraft read(Typed typed) {
        String answer = typed.text("level");
        Optional<EntitlementLevel> level = Typed.one(EntitlementLevel.class, answer);
        Set<Band> bands = typed.all("bands").stream()
                .flatMap(name -> Typed.one(Band.class, name).stream())
                .collect(Collectors.toSet());
        Map<UUID, Vote> votes = new HashMap<>();
        typed.values().keySet().stream()
                .filter(field -> field.matches(VOTE + "[0-9a-f-]{36}"))
                .forEach(field -> typed.one(field, Vote.class)
                        .ifPresent(vote -> votes.put(UUID.fromString(field.substring(VOTE.length())), vote)));
        return new DecisionDraft(
                typed.one("family", Family.class).orElse(null),
                bands,
                level.isPresent() || answer.equals(INSUFFICIENT),
                level.orElse(null),
                typed.day("reviewOn"),
                typed.words("reasons"),
                typed.words("departing"),
                typed.words("dissent"),
                votes);
    }

    /** What an empty form starts with: a review in six months, nothing decided. */
    Typed fresh(Pack pack) {
        LocalDate cutOff = LocalDate.ofInstant(
                pack.cutOff(), people.programme(pack.content().programme().id()).zone());
        LinkedMultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.add("reviewOn", cutOff.plusMonths(REVIEW_MONTHS).toString());
        return new Typed(values);
    }

    /** A draft as it would have been typed. */
    static Typed typed(DecisionDraft draft) {
        LinkedMultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        Optional.ofNullable(draft.family()).ifPresent(family -> values.add("family", family.name()));
        draft.bands().forEach(band -> values.add("bands", band.name()));
        if (draft.answered()) {
            values.add(
                    "level",
                    draft.level() == null ? INSUFFICIENT : draft.level().name());
        }
        Optional.ofNullable(draft.reviewOn()).ifPresent(day -> values.add("reviewOn", day.toString()));
        values.add("reasons", draft.reasons());
        values.add("departing", draft.departing());
        values.add("dissent", draft.dissent());
        draft.votes().forEach((member, vote) -> values.add(VOTE + member, vote.name()));
        return new Typed(values);
    }

    DecisionFormPage form(Pack pack, Ballot ballot, Typed typed, boolean waits, List<Refusal> reasons) {
        UUID trainee = pack.traineeId();
        return new DecisionFormPage(
                Links.writing(pack.meetingId(), trainee),
                Links.evidence(pack.meetingId(), trainee),
                words.say("committee.form.title", pack.content().trainee().name()),
                Arrays.stream(Family.values())
                        .map(family -> Option.of(family, entitlements.family(family)))
                        .toList(),
                Arrays.stream(Band.values())
                        .map(band -> Option.of(band, entitlements.bands(Set.of(band))))
                        .toList(),
                typed.all("bands"),
                levels(),
                typed.all("level"),
                ballot.voting().stream().map(voter -> voter(voter, typed)).toList(),
                ballot.voters().stream()
                        .filter(voter -> !voter.votes())
                        .map(decisions::voter)
                        .toList(),
                words.say("committee.quorum", ballot.voting().size(), ballot.quorum()),
                waits,
                new FormView(typed.shown(), words.errors(reasons)));
    }

    private List<Option> levels() {
        Stream<Option> levels = Arrays.stream(EntitlementLevel.values())
                .map(level -> new Option(level.name(), entitlements.level(level), words.say(level.meaningKey())));
        Option none = new Option(
                INSUFFICIENT,
                words.say("committee.decided.insufficient"),
                words.say("committee.decided.insufficient.means"));
        return Stream.concat(levels, Stream.of(none)).toList();
    }

    private DecisionFormPage.Voter voter(Ballot.Voter voter, Typed typed) {
        String field = VOTE + voter.id();
        return new DecisionFormPage.Voter(
                field,
                decisions.voter(voter),
                Arrays.stream(Vote.values())
                        .map(vote -> Option.of(vote, words.say("committee.vote." + vote)))
                        .toList(),
                typed.all(field));
    }

    DecisionReviewPage review(SignedIn chair, Preview preview, List<Refusal> reasons) {
        Signer signer = preview.content().signer();
        List<FormError> errors = words.errors(reasons);
        return new DecisionReviewPage(
                Links.writing(preview.pack().meetingId(), preview.pack().traineeId()),
                views.of(preview.content()),
                words.errors(preview.obstacles()).stream()
                        .map(FormError::message)
                        .distinct()
                        .toList(),
                signer.name(),
                "role." + signer.role(),
                signer.meaning(),
                preview.hash(),
                statements.accepted(chair.personId()),
                passkeys.ask(chair.accountId(), CanonicalJson.hashBytes(preview.hash()))
                        .orElse(null),
                errors,
                errors.stream()
                        .filter(error -> error.field().equals("password"))
                        .map(FormError::message)
                        .findFirst()
                        .orElse(null));
    }
}
