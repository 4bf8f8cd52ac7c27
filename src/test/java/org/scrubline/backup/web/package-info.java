/** Tests of the administrator's page about the installation. */
@NullMarked
package org.scrubline.backup.web;

import org.jspecify.annotations.NullMarked;
