package org.scrubline.signoff;

import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Reopening;
import org.scrubline.casework.Sheet;
import org.scrubline.platform.NotFound;
import org.scrubline.signoff.SheetContent.Replaces;
import org.springframework.stereotype.Component;

/** Says what a version being written would replace. */
@Component
class ReplacedVersions {

    private final SignedSheetQueries signed;
    private final VersionQueries versions;

    ReplacedVersions(SignedSheetQueries signed, VersionQueries versions) {
        this.signed = signed;
        this.versions = versions;
    }

    /** Null for a sheet that is signed for the first time. */
    @Nullable
    Replaces by(Sheet sheet) {
        Reopening reopening = sheet.reopening();
        if (reopening == null) {
            return null;
        }
        SignedSheet before = signed.newest(sheet.id()).orElseThrow(NotFound::new);
        VersionAuthority authority = versions.authority(sheet.id());
        return new Replaces(
                before.id(),
                before.versionNo(),
                before.contentHash(),
                reopening.reason(),
                authority.basis(),
                authority.grantedBy());
    }
}
