package org.scrubline.signoff;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.VersionSigning.Said;
import org.springframework.stereotype.Component;

/** What must hold when something is signed about a version. */
@Component
class VersionRules {

    static final Set<RecordEvent> ANSWERS = EnumSet.of(RecordEvent.ACKNOWLEDGED, RecordEvent.NOT_ACKNOWLEDGED);
    static final Set<RecordEvent> SECOND = EnumSet.of(RecordEvent.COUNTERSIGNED, RecordEvent.COUNTERSIGN_REFUSED);
    private static final Set<RecordEvent> NEEDS_WORDS =
            EnumSet.of(RecordEvent.NOT_ACKNOWLEDGED, RecordEvent.COUNTERSIGN_REFUSED);

    private final SigningAuthority authority;

    VersionRules(SigningAuthority authority) {
        this.authority = authority;
    }

    /** What somebody who stands so to the version could say about it. */
    Set<RecordEvent> about(SignedIn who, SignedSheet version) {
        return who.personId().equals(version.traineeId()) ? ANSWERS : SECOND;
    }

    /** Why it cannot be signed, if so. */
    Optional<List<Refusal>> against(SignedIn who, Said said, SignedSheet version, RecordState state) {
        List<Refusal> barred = authority(who, said.event(), version);
        if (!barred.isEmpty()) {
            return Optional.of(barred);
        }
        if (!state.allows(said.event())) {
            return Optional.of(List.of(Refusal.of("signoff.refusal.no-more." + said.event())));
        }
        return words(said).map(List::of);
    }

    /** Who they must be, read from the database in the signing transaction. */
    List<Refusal> authority(SignedIn who, RecordEvent event, SignedSheet version) {
        if (SECOND.contains(event)) {
            return authority.countersigner(version, who.personId());
        }
        return who.personId().equals(version.traineeId())
                ? authority.standing(who.personId()).map(List::of).orElse(List.of())
                : List.of(Refusal.at(Signing.AUTHORITY, "signoff.refusal.not-the-trainee"));
    }

    /** Whether the words fit what is said. */
    Optional<Refusal> words(Said said) {
        return NEEDS_WORDS.contains(said.event()) && said.words().isEmpty()
                ? Optional.of(Refusal.at("words", "signoff.refusal.words-empty"))
                : FreeText.narrative("words", said.words(), VersionSigning.WORDS_LENGTH);
    }
}
