package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.scrubline.demo.DemoCast.Supervisor;
import org.scrubline.demo.DemoPeople.Cast;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningStatements;
import org.scrubline.signoff.VersionSigning;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Countersigns what needs it a day later, and leaves the newest records waiting, as in any programme. */
@Component
@Profile("demo")
class DemoCountersigns {

    private static final Duration WAITING = Duration.ofDays(35);

    private final VersionSigning signing;
    private final SigningStatements statements;
    private final ScrublineClock clock;

    DemoCountersigns(VersionSigning signing, SigningStatements statements, ScrublineClock clock) {
        this.signing = signing;
        this.statements = statements;
        this.clock = clock;
    }

    /** Everyone in the history has signed before. */
    void acceptStatements(Cast cast) {
        cast.members().values().forEach(statements::accept);
    }

    void write(Cast cast, Supervisor scorer, SignedSheet record) {
        Instant at = record.signedAt().plus(Duration.ofDays(1));
        if (!record.marks().awaitingCountersignature()
                || at.isAfter(clock.instant().minus(WAITING))) {
            return;
        }
        List<Supervisor> all = DemoCast.SUPERVISORS;
        SignedIn second =
                cast.member(all.get((all.indexOf(scorer) + 1) % all.size()).username());
        VersionSigning.Said said =
                new VersionSigning.Said(RecordEvent.COUNTERSIGNED, record.id(), record.contentHash(), "");
        clock.at(at, () -> signing.signWithoutCredential(second, said).orThrow());
    }
}
