/**
 * Accounts an organisation's own directory opens and closes, by SCIM 2.0 (RFC 7643, RFC 7644). It gives nobody a role: a
 * person of the programme does.
 */
@ApplicationModule(
        displayName = "Provision",
        allowedDependencies = {"people", "platform"})
@NullMarked
package org.scrubline.provision;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
