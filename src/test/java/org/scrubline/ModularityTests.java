package org.scrubline;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;

class ModularityTests {

    @Test
    void noRoomUsesAnotherPastItsContract() {
        ApplicationModules.of(Scrubline.class).verify();
    }
}
