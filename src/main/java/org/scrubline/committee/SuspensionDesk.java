package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.ActWriter.Saying;
import org.scrubline.committee.Suspensions.Of;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.entitlement.EntitlementBook;
import org.scrubline.entitlement.EntitlementChange;
import org.scrubline.entitlement.Entitlements;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Suspends and reinstates, one transaction each. Whoever calls has recognised the director. */
@Service
@Transactional
class SuspensionDesk {

    private final Entitlements entitlements;
    private final EntitlementBook book;
    private final DecisionStore lock;
    private final ActWriter writer;
    private final ActStore acts;
    private final Signers signers;
    private final CommitteeAccess access;

    SuspensionDesk(
            Entitlements entitlements,
            EntitlementBook book,
            DecisionStore lock,
            ActWriter writer,
            ActStore acts,
            Signers signers,
            CommitteeAccess access) {
        this.entitlements = entitlements;
        this.book = book;
        this.lock = lock;
        this.writer = writer;
        this.acts = acts;
        this.signers = signers;
        this.access = access;
    }

    public void recognise(SignedIn who, Of what) {
        require(access.directs(who, what.programmeId()) && !who.personId().equals(what.traineeId()));
    }

    public Attempt<List<Act>> suspend(SignedIn who, Of what, @Nullable SuspensionGround ground, String text) {
        recognise(who, what);
        if (ground == null) {
            return Attempt.refused(Refusal.at("ground", "committee.refusal.ground"));
        }
        return change(who, what, ActKind.SUSPENDED, ground, text);
    }

    public Attempt<List<Act>> reinstate(SignedIn who, Of what, String text) {
        recognise(who, what);
        return change(who, what, ActKind.REINSTATED, null, text);
    }

    private Attempt<List<Act>> change(
            SignedIn who, Of what, ActKind kind, @Nullable SuspensionGround ground, String text) {
        lock.lock(what.traineeId());
        String words = FreeText.tidy(text);
        List<Entitlement> changing = entitlements.of(what.programmeId(), what.traineeId()).stream()
                .filter(one -> one.family() == what.family())
                .filter(one -> one.suspended() == (kind == ActKind.REINSTATED))
                .toList();
        Optional<Refusal> refused = signers.standing(who.personId()).or(() -> ActRules.words(kind, words));
        if (refused.isPresent()) {
            return Attempt.refused(refused.get());
        }
        if (changing.isEmpty()) {
            return Attempt.refused(Refusal.of("committee.refusal.nothing." + kind.name()));
        }
        List<Act> said = new ArrayList<>();
        for (Entitlement one : changing) {
            Act act = writer.about(who, one, ground, Saying.of(kind, Role.DIRECTOR, words));
            book.record(entry(one, kind, act));
            said.add(act);
        }
        return Attempt.done(said);
    }

    private static EntitlementChange entry(Entitlement one, ActKind kind, Act act) {
        return new EntitlementChange(
                one.programmeId(),
                one.traineeId(),
                one.family(),
                one.bands(),
                kind == ActKind.SUSPENDED ? EntitlementChange.Kind.SUSPENDED : EntitlementChange.Kind.REINSTATED,
                null,
                null,
                act.id(),
                act.content().signer().id(),
                act.content().signedAt());
    }

    @Transactional(readOnly = true)
    public List<Act> history(SignedIn who, UUID programmeId, UUID traineeId) {
        require(access.reads(who, programmeId, traineeId) || who.personId().equals(traineeId));
        return acts.ofTrainee(programmeId, traineeId);
    }
}
