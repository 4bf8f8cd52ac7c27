package org.scrubline.backup;

import java.util.Optional;

/** The version of this program as its jar states it. */
final class ProgramVersion {

    private ProgramVersion() {}

    static String current() {
        return Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
                .orElse("not packaged");
    }
}
