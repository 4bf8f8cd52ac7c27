package org.scrubline.platform;

import java.time.Instant;
import java.util.Collection;
import java.util.List;

/** Log-ins that were refused, for those who look after the accounts. */
public interface RefusedLogins {

    /** Refusals of these log-in names since an instant, the latest first; names never refused are left out. */
    List<Refused> of(Collection<String> usernames, Instant since);

    /** Forgets refusals older than 90 days, codes that have run out and limits nobody has used up. */
    void forgetOld();

    /**
     * Refusals of one log-in name.
     *
     * @param wrong attempts with a wrong password
     * @param blocked attempts answered before the password was looked at
     * @param lastAddress where the last one came from
     */
    record Refused(String username, int wrong, int blocked, Instant lastAt, String lastAddress) {}
}
