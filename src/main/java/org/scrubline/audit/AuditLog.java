package org.scrubline.audit;

import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.scrubline.platform.RefusedLogins.Refused;
import org.scrubline.platform.SignedIn;

/** Reads entries as far as a person may. */
public interface AuditLog {

    /** Entries on one page. */
    int PAGE = 50;

    /**
     * The programme this person oversees as director or administrator.
     *
     * @throws org.scrubline.platform.NotFound for everyone else
     */
    UUID overseen(SignedIn who);

    /**
     * What was done in a programme: entries that belong to it, and entries of the whole organisation made by its people.
     *
     * @throws org.scrubline.platform.NotFound unless this person oversees the programme
     */
    AuditSlice done(SignedIn who, UUID programmeId, AuditFilter filter, AuditSlice.Place place);

    /** Hands over every such entry, newest first; throws as {@link #done}. */
    void allDone(SignedIn who, UUID programmeId, AuditFilter filter, Consumer<AuditEntry> each);

    /** Log-ins to accounts of the programme's people refused in the last 30 days; throws as {@link #done}. */
    List<Refused> refusedLogins(SignedIn who, UUID programmeId);

    /** Who read records about this person. */
    AuditSlice seen(SignedIn who, AuditSlice.Place place);

    /** Hands over every entry by or about this person, newest first. */
    void allOwn(SignedIn who, Consumer<AuditEntry> each);
}
