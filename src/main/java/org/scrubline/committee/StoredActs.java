package org.scrubline.committee;

import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignerCheck;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.stereotype.Service;

/** Recognises who signs before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredActs implements Acts {

    private final ActDesk desk;
    private final ActRules rules;
    private final SignerCheck signers;

    StoredActs(ActDesk desk, ActRules rules, SignerCheck signers) {
        this.desk = desk;
        this.rules = rules;
        this.signers = signers;
    }

    @Override
    public Attempt<Act> sendLetter(SignedIn who, UUID decisionId) {
        return desk.letter(who, decisionId);
    }

    @Override
    public Attempt<Act> appeal(SignedIn trainee, UUID decisionId, Signature signature) {
        return say(trainee, decisionId, ActKind.APPEALED, signature);
    }

    @Override
    public List<Person> hearers(SignedIn director, UUID decisionId) {
        return desk.hearers(director, decisionId);
    }

    @Override
    public Attempt<Act> namePanel(SignedIn director, UUID decisionId, List<UUID> persons, Signature signature) {
        return signed(
                director,
                decisionId,
                ActKind.PANEL_NAMED,
                signature,
                () -> desk.panel(director, decisionId, persons, signature.text()));
    }

    @Override
    public Attempt<Act> decideAppeal(SignedIn hearer, UUID decisionId, boolean upheld, Signature signature) {
        return say(hearer, decisionId, upheld ? ActKind.APPEAL_UPHELD : ActKind.APPEAL_NOT_UPHELD, signature);
    }

    @Override
    public Attempt<Act> endAppeal(SignedIn trainee, UUID decisionId, Signature signature) {
        return say(trainee, decisionId, ActKind.APPEAL_ENDED, signature);
    }

    @Override
    public List<ActKind> next(SignedIn who, DecisionFile file) {
        return rules.next(who, file);
    }

    private Attempt<Act> say(SignedIn who, UUID decisionId, ActKind kind, Signature signature) {
        return signed(who, decisionId, kind, signature, () -> desk.say(who, decisionId, kind, signature.text()));
    }

    private Attempt<Act> signed(
            SignedIn who, UUID decisionId, ActKind kind, Signature signature, Supplier<Attempt<Act>> saying) {
        desk.recognise(who, decisionId, kind);
        return signers.confirm(who, signature.credential(), signature.intended())
                .fold(how -> saying.get(), Attempt::refused);
    }
}
