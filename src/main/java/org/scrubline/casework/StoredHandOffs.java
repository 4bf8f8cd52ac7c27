package org.scrubline.casework;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Guesses;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

/** Slows guessing outside the transaction that looks a code up. */
@Service
class StoredHandOffs implements HandOffs {

    private final HandOffDesk desk;
    private final Guesses guesses;

    StoredHandOffs(HandOffDesk desk, Guesses guesses) {
        this.desk = desk;
        this.guesses = guesses;
    }

    @Override
    public Attempt<Offer> offer(SignedIn trainee, UUID sheetId) {
        return desk.offer(trainee, sheetId);
    }

    @Override
    public Attempt<UUID> take(SignedIn supervisor, String code, boolean instead) {
        String subject = "hand-off:" + supervisor.personId();
        Optional<Duration> wait = guesses.blockedFor(subject);
        if (wait.isPresent()) {
            return Attempt.refused(Refusal.at(HandOffDesk.FIELD, "hand-off.refusal.wait"));
        }
        Attempt<UUID> taken = desk.take(supervisor, code, instead);
        if (taken.fold(sheet -> List.<Refusal>of(), reasons -> reasons).contains(HandOffDesk.UNKNOWN)) {
            guesses.failed(subject);
        } else {
            guesses.succeeded(subject);
        }
        return taken;
    }
}
