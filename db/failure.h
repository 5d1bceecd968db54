// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/result.h"

#include <exception>
#include <utility>

namespace quadrille::db
{

/// Thrown inside Store::read and Store::write to end the act: everything in it is rolled back and
/// the Error comes back to the caller.
class Failure : public std::exception
{
public:
    explicit Failure(Error error)
        : m_error(std::move(error))
    {
    }
    const Error& error() const { return m_error; }
    const char* what() const noexcept override { return m_error.detail.c_str(); }

private:
    Error m_error;
};

} // namespace quadrille::db
