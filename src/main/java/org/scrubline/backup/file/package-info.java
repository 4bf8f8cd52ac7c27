/** The backup file: one zip with a closing digest, sealed under a passphrase on request. Knows files, not databases. */
@NamedInterface("file")
@NullMarked
package org.scrubline.backup.file;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
