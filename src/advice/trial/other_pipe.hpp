#pragma once

#include "fluewright/advice/trial/change.hpp"

namespace fluewright {

/// The run with other pipe; masonry and rectangular flues keep their size. Failure: where too
/// little would be left of the topmost straight.
[[nodiscard]] Result<Installation, std::string> with_other_pipe(const Installation& written,
                                                                const OtherPipe& pipe);

/// The run with another clay liner in its masonry. Failure: where there is no masonry.
[[nodiscard]] Result<Installation, std::string> with_other_clay_liner(const Installation& written,
                                                                      const OtherClayLiner& other);

} // namespace fluewright
