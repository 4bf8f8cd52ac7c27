/**
 * Signing: what exactly is signed, by whom, with what meaning, and the signed records everything else counts from.
 */
@ApplicationModule(
        displayName = "Sign-off",
        allowedDependencies = {"casework", "rubric", "people", "ledger", "platform"})
@NullMarked
package org.scrubline.signoff;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
