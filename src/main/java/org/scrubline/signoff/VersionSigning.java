package org.scrubline.signoff;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;

/** Signatures about signed versions: a second supervisor's countersignature and the trainee's answer. */
public interface VersionSigning {

    /** What can be signed about a version. */
    Set<RecordEvent> EVENTS = Set.of(
            RecordEvent.COUNTERSIGNED,
            RecordEvent.COUNTERSIGN_REFUSED,
            RecordEvent.ACKNOWLEDGED,
            RecordEvent.NOT_ACKNOWLEDGED);

    /** Longest comment or reason in characters. */
    int WORDS_LENGTH = 1000;

    /** Records this supervisor may countersign, longest waiting first. */
    List<SignedLine> toCountersign(SignedIn supervisor);

    /** Records that wait for a countersignature in the programmes this person directs, longest waiting first. */
    List<SignedLine> awaited(SignedIn director);

    /** Everything signed about a version, oldest first, for a person who may read it. */
    List<VersionSignature> of(SignedIn who, UUID record);

    /** What this person may sign about a version now: of the four events of {@link VersionSignature#event()}. */
    Set<RecordEvent> mayFollow(SignedIn who, SignedSheet version);

    /**
     * Signs with a password typed anew, or with a passkey that signs the {@link Intent}. The same person saying the same about the same version again is answered with
     * the first signature.
     *
     * @param said what is signed, about which content
     * @return the signature, or why not; the fields are {@code words}, those of the credential and {@link Signing#AUTHORITY}
     * @throws org.scrubline.platform.NotFound for whoever may not read the record
     * @throws org.scrubline.platform.StaleData when there is a newer version, or a passkey signed something else
     */
    Attempt<VersionSignature> sign(SignedIn who, Said said, Credential credential);

    /** The same below the credential check, for history written by the demo programme. */
    Attempt<VersionSignature> signWithoutCredential(SignedIn who, Said said);

    /**
     * What is to be signed.
     *
     * @param record the signed version
     * @param contentHash its hash as shown to the signer
     * @param words comment or reason; needed when something is refused
     */
    record Said(RecordEvent event, UUID record, String contentHash, String words) {
        public Said {
            if (!EVENTS.contains(event)) {
                throw new IllegalArgumentException(event + " is not signed about a version");
            }
        }
    }
}
