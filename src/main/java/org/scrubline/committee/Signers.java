package org.scrubline.committee;

import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Signer;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Who may sign at all, and how a signature is printed. */
@Component
class Signers {

    private final People people;
    private final MessageSource messages;

    Signers(People people, MessageSource messages) {
        this.people = people;
        this.messages = messages;
    }

    /** What keeps this person from signing anything, read from the database, never from the session. */
    Optional<Refusal> standing(UUID person) {
        Optional<People.Signatory> open = people.signatory(person).filter(People.Signatory::open);
        if (open.isEmpty()) {
            return Optional.of(Refusal.of("committee.refusal.closed-account"));
        }
        return open.filter(People.Signatory::shared).map(shared -> Refusal.of("committee.refusal.shared"));
    }

    /** The meaning is signed in the one language records are kept in, whatever the reader's. */
    Signer sign(SignedIn who, Role role, String meaning) {
        String key = "committee.meaning." + meaning;
        return new Signer(
                who.personId(), who.printedName(), role.name(), key, messages.getMessage(key, null, Locale.ENGLISH));
    }

    /** In which role of this programme somebody of the committee speaks. */
    static Role role(SignedIn who, UUID programme) {
        return who.has(Role.DIRECTOR, programme) ? Role.DIRECTOR : Role.COMMITTEE_MEMBER;
    }
}
