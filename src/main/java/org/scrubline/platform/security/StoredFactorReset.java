package org.scrubline.platform.security;

import java.util.UUID;
import org.scrubline.platform.FactorReset;
import org.scrubline.platform.OpenLogIns;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.factor.SecondFactors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredFactorReset implements FactorReset {

    private static final Logger log = LoggerFactory.getLogger(StoredFactorReset.class);

    private final SecondFactors factors;
    private final Passkeys passkeys;
    private final OpenLogIns logIns;

    StoredFactorReset(SecondFactors factors, Passkeys passkeys, OpenLogIns logIns) {
        this.factors = factors;
        this.passkeys = passkeys;
        this.logIns = logIns;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean any(UUID account) {
        return factors.app(account).isPresent() || !passkeys.of(account).isEmpty();
    }

    @Override
    public void clear(UUID account, String username) {
        factors.clear(account);
        passkeys.of(account).forEach(key -> passkeys.remove(account, key.id()));
        logIns.endAll(username);
        log.warn("Security note: two administrators took the second factor of an account away, account {}", account);
    }
}
