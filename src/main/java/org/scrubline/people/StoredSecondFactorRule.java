package org.scrubline.people;

import org.scrubline.platform.SecondFactorRule;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

/** As the settings of each programme say about each role somebody holds there. */
@Service
class StoredSecondFactorRule implements SecondFactorRule {

    private final Settings settings;

    StoredSecondFactorRule(Settings settings) {
        this.settings = settings;
    }

    @Override
    public boolean required(SignedIn who) {
        return who.grants().stream()
                .anyMatch(grant -> settings.of(grant.programmeId()).secondFactor(grant.role()));
    }
}
