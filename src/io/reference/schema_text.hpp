#pragma once

#include "fluewright/model/fields/fields.hpp"

#include <string>

/// Wording that the schema and the reference share.
namespace fluewright {

/// What is taken where the key is left out; empty where there is no single figure.
[[nodiscard]] std::string default_in_words(const FieldInfo& field);

/// Whether the row takes numbers, as its member tells.
template <class T>
[[nodiscard]] bool takes_number(const Field<T>& field) {
    return std::holds_alternative<Given T::*>(field.member)
           || std::holds_alternative<HighLow T::*>(field.member);
}

} // namespace fluewright
