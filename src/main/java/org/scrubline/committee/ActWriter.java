package org.scrubline.committee;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.DecisionContent.Referred;
import org.scrubline.entitlement.Bands;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Writes a statement as its signer says it now, stores it and fixes it in the ledger. */
@Component
class ActWriter {

    private static final CredentialUsed PASSWORD = new CredentialUsed(CredentialUsed.Kind.PASSWORD, null);

    private final ActStore store;
    private final Signers signers;
    private final People people;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ActWriter(
            ActStore store,
            Signers signers,
            People people,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.signers = signers;
        this.people = people;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /**
     * What a statement says.
     *
     * @param role in which the signer speaks
     * @param until of a letter, null otherwise
     * @param password whether the signer was recognised by a password
     */
    record Saying(
            ActKind kind,
            Role role,
            List<Named> persons,
            @Nullable Instant until,
            String text,
            boolean password) {

        static Saying of(ActKind kind, Role role, String text) {
            return new Saying(kind, role, List.of(), null, text, true);
        }
    }

    Act about(SignedIn who, Decision decision, Saying saying) {
        DecisionContent content = decision.content();
        return keep(new ActContent(
                ActContent.SCHEMA,
                saying.kind(),
                content.organisation(),
                content.programme(),
                content.trainee(),
                new Referred(decision.id(), decision.hash()),
                null,
                null,
                null,
                saying.persons(),
                saying.until(),
                saying.text(),
                signers.sign(who, saying.role(), saying.kind().name()),
                now(),
                people.programme(content.programme().id()).zone(),
                saying.password() ? PASSWORD : null));
    }

    /** A suspension or reinstatement of what holds. */
    Act about(SignedIn who, Entitlement one, @Nullable SuspensionGround ground, Saying saying) {
        var programme = people.programme(one.programmeId());
        return keep(new ActContent(
                ActContent.SCHEMA,
                saying.kind(),
                new Named(who.tenantId(), who.organisationName()),
                new Named(programme.id(), programme.name()),
                new Named(
                        one.traineeId(),
                        people.person(one.traineeId()).orElseThrow().printedName()),
                null,
                one.family(),
                Bands.write(one.bands()),
                ground,
                List.of(),
                null,
                saying.text(),
                signers.sign(who, saying.role(), saying.kind().name()),
                now(),
                programme.zone(),
                PASSWORD));
    }

    Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    private Act keep(ActContent content) {
        Act act = Act.of(content);
        store.insert(act);
        events.publishEvent(CommitteeDone.record(
                action(content.kind()),
                "committee-act",
                act.id(),
                content.trainee().id(),
                content.programme().id()));
        ledger.append(LeafKind.COMMITTEE_ACT, act.id());
        return act;
    }

    private static String action(ActKind kind) {
        return switch (kind) {
            case LETTER_SENT -> "letter-sent";
            case APPEALED -> "decision-appealed";
            case PANEL_NAMED -> "panel-named";
            case APPEAL_UPHELD, APPEAL_NOT_UPHELD -> "appeal-decided";
            case APPEAL_ENDED -> "appeal-ended";
            case SUSPENDED -> "entitlement-suspended";
            case REINSTATED -> "entitlement-reinstated";
        };
    }
}
