package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Writes down that somebody tried to sign what is not theirs to sign. */
@Service
class RefusedSignatures {

    private final SignedSheetQueries sheets;
    private final ApplicationEventPublisher events;

    RefusedSignatures(SignedSheetQueries sheets, ApplicationEventPublisher events) {
        this.sheets = sheets;
        this.events = events;
    }

    /** After the refused transaction, in one of its own. A record that never was leaves no entry. */
    @Transactional
    public void note(SignedIn who, RecordEvent event, UUID record) {
        sheets.byId(record)
                .filter(version -> who.tenantId().equals(TenantScope.require()))
                .ifPresent(version -> events.publishEvent(new SignatureRefused(who, event, version)));
    }
}
