/**
 * What a trainee's way begins with, beside the cases: the induction, the baseline and goals of the year, practice away from
 * patients and who signed it off. Entries are added and answered, never changed. The pages of the exposure plan stand here
 * too, since it speaks of families of procedures.
 */
@ApplicationModule(
        displayName = "Training",
        allowedDependencies = {"rubric", "people", "ledger", "platform"})
@NullMarked
package org.scrubline.training;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
