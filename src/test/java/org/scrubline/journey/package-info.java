/** The packaged server as its users meet it: started as a process, used in a browser, killed and started again. */
@NullMarked
package org.scrubline.journey;

import org.jspecify.annotations.NullMarked;
