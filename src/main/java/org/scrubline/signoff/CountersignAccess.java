package org.scrubline.signoff;

import java.util.List;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Who may read one sheet in order to countersign it: those who may do so now, and those who answered. */
@Component
class CountersignAccess {

    private final SigningAuthority authority;
    private final VersionSignatureStore signatures;
    private final CountersignQueries queries;

    CountersignAccess(SigningAuthority authority, VersionSignatureStore signatures, CountersignQueries queries) {
        this.queries = queries;
        this.authority = authority;
        this.signatures = signatures;
    }

    boolean mayRead(SignedIn who, SignedSheet version) {
        return mayCountersign(who, version) || answered(who, version);
    }

    boolean mayCountersign(SignedIn who, SignedSheet version) {
        return version.marks().awaitingCountersignature()
                && who.has(Role.SUPERVISOR, version.programmeId())
                && authority.countersigner(version, who.personId()).isEmpty();
    }

    /** Whether this person might have countersigned it, had not somebody else; they are told so rather than nothing. */
    boolean mightCountersign(SignedIn who, SignedSheet version) {
        return who.has(Role.SUPERVISOR, version.programmeId())
                && !queries.reasons(version.id()).isEmpty()
                && authority.countersigner(version, who.personId()).isEmpty();
    }

    private boolean answered(SignedIn who, SignedSheet version) {
        List<VersionSignature> all = signatures.of(version.id());
        return all.stream().anyMatch(signature -> signature.signerId().equals(who.personId()));
    }
}
